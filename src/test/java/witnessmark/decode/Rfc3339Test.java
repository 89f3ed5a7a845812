package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class Rfc3339Test {
  @ParameterizedTest
  @CsvSource({
    "2026-11-25T10:02:03.120Z, 2026-11-25T10:02:03.120Z",
    "2026-11-25T11:02:03+01:00, 2026-11-25T10:02:03Z",
    "2026-11-25T04:32:03-05:30, 2026-11-25T10:02:03Z",
    "2026-11-25t10:02:03z, 2026-11-25T10:02:03Z",
    "2026-11-25T10:02:03.123456789-00:00, 2026-11-25T10:02:03.123456789Z",
    "2024-02-29T23:59:59+23:59, 2024-02-29T00:00:59Z",
    "0000-01-01T00:00:00Z, 0000-01-01T00:00:00Z",
    "9999-12-31T23:59:59.999999999Z, 9999-12-31T23:59:59.999999999Z",
  })
  void aDateAndTimeWithOffsetIsAMoment(String text, String moment) throws Refusal {
    assertThat(Rfc3339.read(text)).isEqualTo(Instant.parse(moment));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-11-25T10:02:03",
        "2026-11-25 10:02:03Z",
        "2026-11-25",
        "2026-11-25T10:02Z",
        "2026-11-25T10:02:03.Z",
        "2026-11-25T10:02:03.1234567890Z",
        "2026-11-25T10:02:03+0100",
        "+2026-11-25T10:02:03Z",
        "12026-11-25T10:02:03Z",
        "2026-11-25T10:02:03Z ",
      })
  void anotherFormIsRefused(String text) {
    assertThatThrownBy(() -> Rfc3339.read(text))
        .isInstanceOf(Refusal.class)
        .hasMessage(
            "time \""
                + text
                + "\" is not RFC 3339 with offset; allowed are forms like"
                + " 2026-11-25T10:02:03.120Z or 2026-11-25T11:02:03+01:00, with at most 9 digits"
                + " after the point");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-02-29T10:02:03Z",
        "2026-13-01T10:02:03Z",
        "2026-11-25T24:00:00Z",
        "2026-11-25T10:60:03Z",
        "2026-11-25T10:02:61Z",
        "2026-11-25T10:02:03+24:00",
        "2026-11-25T10:02:03+01:60",
      })
  void aMomentThatDoesNotExistIsRefused(String text) {
    assertThatThrownBy(() -> Rfc3339.read(text))
        .hasMessage(
            "time \"" + text + "\" does not exist; a date and time of the calendar is allowed");
  }

  @Test
  void aLeapSecondIsRefused() {
    assertThatThrownBy(() -> Rfc3339.read("2016-12-31T23:59:60Z"))
        .hasMessage(
            "time \"2016-12-31T23:59:60Z\" is a leap second, which has no place on the bridge's"
                + " clock; seconds 00 to 59 are allowed");
  }

  @ParameterizedTest
  @ValueSource(strings = {"0000-01-01T00:00:00+00:01", "9999-12-31T23:59:59-00:01"})
  void aMomentWhoseUtcYearHasNotFourDigitsIsRefused(String text) {
    assertThatThrownBy(() -> Rfc3339.read(text))
        .hasMessage(
            "time \"" + text + "\" is out of range; the years 0000 to 9999 UTC are allowed");
  }
}
