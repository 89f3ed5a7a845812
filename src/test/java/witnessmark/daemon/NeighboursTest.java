package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NeighboursTest {
  private static final String OK = "{\"bridge\":\"shop-2\",\"state\":\"ok\"}";

  private final Neighbours neighbours = new Neighbours("shop-1", "broker");

  private boolean hear(String topic, String payload) {
    return neighbours.heard("witnessmark/v1/" + topic, payload.getBytes(UTF_8));
  }

  @Test
  void anotherBridgeIsNamedUntilItIsGone() {
    assertThat(hear("shop-2/health", OK)).isTrue();
    assertThat(neighbours.warning())
        .contains(
            "broker: bridge \"shop-2\" answers for the same stations; stop one of the two, or give"
                + " each its own stations");
    hear("shop-2/health", OK.replace("ok", "degraded"));
    assertThat(neighbours.warning()).isPresent();
    hear("shop-2/health", OK.replace("ok", "gone"));
    assertThat(neighbours.warning()).isEmpty();
    hear("shop-2/health", OK);
    hear("shop-2/health", "");
    assertThat(neighbours.warning()).as("its retained health was cleared").isEmpty();
  }

  @Test
  void theOwnHealthIsNobodyElses() {
    assertThat(hear("shop-1/health", OK)).isTrue();
    assertThat(neighbours.warning()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "nonsense", "[]", "null", "{}", "{\"state\":7}", "{\"state\":\"gone\"}"})
  void whatIsNoLivingBridgesHealthIsNone(String payload) {
    assertThat(hear("shop-2/health", payload)).isTrue();
    assertThat(neighbours.warning()).isEmpty();
  }

  @Test
  void aHealthOfManyKilobytesIsNotRead() {
    String large = OK.replace("}", ",\"links\":\"" + "x".repeat(70_000) + "\"}");
    assertThat(hear("shop-2/health", large)).isTrue();
    assertThat(neighbours.warning()).isEmpty();
  }

  @Test
  void anythingElseIsNotTaken() {
    assertThat(hear("bench-1/torque", OK)).isFalse();
    assertThat(hear("a/b/health", OK)).isFalse();
    assertThat(neighbours.heard("plant/health", OK.getBytes(UTF_8))).isFalse();
    assertThat(hear("\n/health", OK)).isTrue();
    assertThat(neighbours.warning()).isEmpty();
  }
}
