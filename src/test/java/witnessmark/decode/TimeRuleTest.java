package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeRuleTest {
  private static final TimeRule ZURICH =
      TimeRule.of("dd.MM.yyyy HH:mm:ss", Optional.of(ZoneId.of("Europe/Zurich")));

  @ParameterizedTest
  @CsvSource({
    "25.11.2026 11:02:03, 2026-11-25T10:02:03Z",
    "25.07.2026 11:02:03, 2026-07-25T09:02:03Z",
    "29.02.2028 00:00:00, 2028-02-28T23:00:00Z",
  })
  void aLocalTimeIsReadInItsZone(String text, String moment) throws Refusal {
    assertThat(ZURICH.read(text)).isEqualTo(Instant.parse(moment));
  }

  @ParameterizedTest
  @CsvSource({
    "yyyy-MM-dd HH:mm:ss.SSSXXX, 2026-11-25 11:02:03.120+01:00, 2026-11-25T10:02:03.120Z",
    "uuuuMMddHHmmssX, 20261125100203Z, 2026-11-25T10:02:03Z",
    "dd MMM yy hh:mm a XX, 25 nov 26 10:02 pm -0530, 2026-11-26T03:32:00Z",
    "yyyy-MM-dd'T'HH:mm'['VV']', 2026-11-25T11:02[Europe/Zurich], 2026-11-25T10:02:00Z",
  })
  void anOffsetOrZoneInTheTextCounts(String format, String text, String moment) throws Refusal {
    assertThat(TimeRule.of(format, Optional.empty()).read(text)).isEqualTo(Instant.parse(moment));
  }

  @ParameterizedTest
  @CsvSource({"30.02.2026 10:00:00", "25.11.2026 24:00:00", "25.11.26 10:00:00", "25.11.2026"})
  void anotherFormOrADayThatDoesNotExistIsRefused(String text) {
    assertThatThrownBy(() -> ZURICH.read(text))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "time \"" + text + "\" is not written like \"25.11.2026 10:02:03\", or does not exist");
  }

  @Test
  void anHourThatTheClocksSkippedOrRepeatedIsRefused() {
    assertThatThrownBy(() -> ZURICH.read("29.03.2026 02:30:00"))
        .hasMessage(
            "time \"29.03.2026 02:30:00\" never was in Europe/Zurich, where the clocks changed; a"
                + " time with its offset would tell");
    assertThatThrownBy(() -> ZURICH.read("25.10.2026 02:30:00"))
        .hasMessage(
            "time \"25.10.2026 02:30:00\" was twice in Europe/Zurich, where the clocks changed; a"
                + " time with its offset would tell");
  }

  @Test
  void aYearOfMoreThanFourDigitsIsRefused() {
    TimeRule rule = TimeRule.of("u-MM-dd HH:mm", Optional.of(ZoneId.of("Z")));
    assertThatThrownBy(() -> rule.read("10000-01-01 00:00"))
        .hasMessage(
            "time \"10000-01-01 00:00\" is out of range; the years 0000 to 9999 UTC are allowed");
  }
}
