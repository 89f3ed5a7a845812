package witnessmark.daemon;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NeighboursTest {
  private static final String OK = "{\"bridge\":\"shop-2\",\"state\":\"ok\"}";

  private static final String NAMESAKE =
      "{\"bridge\":\"shop-1\",\"state\":\"ok\",\"since\":\"2026-11-26T10:00:01Z\"}";
  private static final String OWN = NAMESAKE.replace(":01Z", ":00Z");
  private static final String GONE = "{\"bridge\":\"shop-1\",\"state\":\"gone\"}";

  private long nanos;
  private final Neighbours neighbours =
      new Neighbours("shop-1", "2026-11-26T10:00:00Z", "broker", () -> nanos);

  private boolean hear(String topic, String payload) {
    return neighbours.heard("witnessmark/v1/" + topic, payload.getBytes(UTF_8), false);
  }

  private void retained(String payload) {
    neighbours.heard("witnessmark/v1/shop-1/health", payload.getBytes(UTF_8), true);
  }

  @Test
  void oneOfTheSameNameIsNamedUntilItIsGone() {
    hear("shop-1/health", NAMESAKE);
    hear("shop-1/health", OWN);
    assertThat(neighbours.warning())
        .contains(
            "broker: another bridge of the name \"shop-1\" tells its health here, too; give each"
                + " its own name in [bridge]");
    retained(NAMESAKE);
    assertThat(neighbours.warning()).isPresent();
    hear("shop-1/health", GONE);
    assertThat(neighbours.warning()).isEmpty();
  }

  @Test
  void anEarlierRunOfThisBridgeIsNoOther() {
    retained(NAMESAKE);
    retained(GONE);
    hear("shop-1/health", GONE);
    hear("shop-1/health", OWN);
    hear("shop-1/health", "{\"state\":\"ok\"}");
    assertThat(neighbours.warning()).isEmpty();
  }

  @Test
  void oneThatIsSilentForHoursIsGone() {
    hear("shop-1/health", NAMESAKE);
    nanos = Duration.ofMinutes(119).toNanos();
    assertThat(neighbours.warning()).isPresent();
    nanos = Duration.ofMinutes(120).toNanos();
    assertThat(neighbours.warning()).isEmpty();
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
    assertThat(neighbours.heard("plant/health", OK.getBytes(UTF_8), false)).isFalse();
    assertThat(hear("\n/health", OK)).isTrue();
    assertThat(neighbours.warning()).isEmpty();
  }
}
