package witnessmark.entry;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.DateTimeParseException;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Moments are written and read as the library writes and reads them. */
class MomentsTest {
  private static final DateTimeFormatter MILLIS =
      new DateTimeFormatterBuilder().appendInstant(3).toFormatter();

  private static void same(Instant moment) {
    String text = Moments.text(moment);
    assertThat(text)
        .isEqualTo(moment.getNano() % 1_000_000 == 0 ? MILLIS.format(moment) : moment.toString());
    assertThat(Moments.parse(text)).isEqualTo(moment).isEqualTo(Instant.parse(text));
  }

  @Test
  void textsAreThoseOfTheFormatter() {
    Random random = new Random(5);
    for (int i = 0; i < 100_000; i++) {
      long milli = random.nextLong(-70_000_000_000_000L, 300_000_000_000_000L);
      same(Instant.ofEpochMilli(milli));
    }
    same(Instant.ofEpochSecond(1, 1));
    same(Instant.EPOCH);
    same(Instant.parse("2024-02-29T23:59:59.999Z"));
    same(Instant.parse("0999-12-31T23:59:59.999Z"));
    same(Instant.parse("1000-01-01T00:00:00Z"));
    same(Instant.parse("9999-12-31T23:59:59.999Z"));
    same(Instant.parse("+10000-01-01T00:00:00Z"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-02-30T10:02:03.311Z",
        "2026-13-01T10:02:03.311Z",
        "2026-11-25T25:02:03.311Z",
        "2026-11-25T10:62:03.311Z",
        "2026-11-25T10:02:61.311Z",
        "2026-11-25 10:02:03.311Z",
        "2026-1a-25T10:02:03.311Z",
        "2026-11-25T10:02:03.311+",
        ""
      })
  void whatTheLibraryDoesNotReadIsRefused(String text) {
    assertThatThrownBy(() -> Moments.parse(text)).isInstanceOf(DateTimeParseException.class);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "2026-11-25T10:02:03.311Z",
        "2026-11-25T10:02:03Z",
        "2026-11-25T24:00:00.000Z",
        "2026-12-31T23:59:60.000Z"
      })
  void whatTheLibraryReadsIsReadAlike(String text) {
    assertThat(Moments.parse(text)).isEqualTo(Instant.parse(text));
  }
}
