package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Titles and units that would act in a document, or be read otherwise, if they were not text. */
class InjectionTest {
  @TempDir private Path directory;

  private byte[] pdf(String unit, String title) {
    Proved proved = Cases.proved(directory.resolve("log"), Cases.closed(1, unit, title), unit);
    return Certificate.render(proved, Paper.A4, Cases.PROGRAM);
  }

  @Test
  void nothingActsInACertificateWhateverIsCalledHow() throws Exception {
    String unit = ") /JS (app.alert(1)) /OpenAction (" + "x".repeat(30);
    String title = "]] >> endobj <</S /JavaScript>> stream <script>" + "w".repeat(50);
    byte[] pdf = pdf(unit, title);
    assertThat(Hidden.in(Written.of(pdf))).isEmpty();
    String text = String.join("", PageTexts.read(pdf).stream().flatMap(List::stream).toList());
    assertThat(text.replaceAll("\\s", "")).contains("/JavaScript", "app.alert(1)");
  }

  @Test
  void noCharacterTurnsTheReadingDirectionRound() {
    byte[] pdf = pdf("ATR-26-0147", "ok \u202e dewolla ton \u2066 \u200f");
    assertThat(PageTexts.read(pdf).toString()).doesNotContain("\u202e", "\u2066", "\u200f");
  }
}
