package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class GrantedTest {
  private static final List<String> FILTERS =
      List.of("witnessmark/v1/+/torque", "witnessmark/v1/+/scan");

  @Test
  void acceptsQosOneForEveryFilter() {
    assertThat(Granted.fault(FILTERS, new int[] {1, 1})).isEmpty();
  }

  @Test
  void namesTheFilterTheBrokerRefused() {
    assertThat(Granted.fault(FILTERS, new int[] {1, 0x80}))
        .contains(
            "the broker refused the subscription to \"witnessmark/v1/+/scan\"; check what its"
                + " access list allows this user");
  }

  @Test
  void takesAMissingAnswerForARefusal() {
    assertThat(Granted.fault(FILTERS, new int[] {1}).orElseThrow())
        .startsWith("the broker refused the subscription to \"witnessmark/v1/+/scan\"");
  }

  @Test
  void doesNotSettleForQosZero() {
    assertThat(Granted.fault(FILTERS, new int[] {0, 1}))
        .contains(
            "the broker grants \"witnessmark/v1/+/torque\" only QoS 0, under which messages get"
                + " lost; raise its limit to QoS 1");
  }
}
