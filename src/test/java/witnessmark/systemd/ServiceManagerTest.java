package witnessmark.systemd;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ServiceManagerTest {
  @Test
  void nobodyIsToldWhereNobodyAsked() {
    assertThat(ServiceManager.of(Map.of(), 7)).isEmpty();
    assertThat(ServiceManager.of(Map.of("WATCHDOG_USEC", "30000000"), 7)).isEmpty();
  }

  @Test
  void signsOfLifeAreGivenOnlyWhereThisProcessIsToGiveThem() {
    assertThat(ServiceManager.patience(Map.of(), 7)).isEmpty();
    assertThat(ServiceManager.patience(Map.of("WATCHDOG_USEC", "30000000"), 7))
        .contains(Duration.ofSeconds(30));
    assertThat(ServiceManager.patience(Map.of("WATCHDOG_USEC", "30000000", "WATCHDOG_PID", "7"), 7))
        .contains(Duration.ofSeconds(30));
    assertThat(ServiceManager.patience(Map.of("WATCHDOG_USEC", "30000000", "WATCHDOG_PID", "8"), 7))
        .isEmpty();
  }

  @Test
  void anIntervalThatIsNoneIsNotTakenForOne() {
    for (String wrong : new String[] {"", "0", "-1", "soon", "30s", "99999999999999999999"}) {
      assertThat(ServiceManager.patience(Map.of("WATCHDOG_USEC", wrong), 7)).as(wrong).isEmpty();
    }
  }

  @Test
  void aStatusIsOneLineWhateverALinkSays() {
    assertThat(ServiceManager.status("broker: refused\nWATCHDOG=1\r\n"))
        .isEqualTo("STATUS=broker: refused WATCHDOG=1\n");
  }
}
