package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.OptionalLong;
import java.util.Random;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.pipeline.OnDisk;
import witnessmark.recall.Histories;
import witnessmark.recall.Recall;
import witnessmark.recall.Rejudged;
import witnessmark.recall.Survey;
import witnessmark.report.Provenance;

/** The call-back on paper. */
class CallBackTest {
  private static final Provenance SOURCE =
      new Provenance(
          "Witnessmark test",
          Instant.parse("2026-12-01T09:00:00Z"),
          "witnessmark.local/log/0123456789abcdef",
          68,
          "cm9vdA==");

  @TempDir private Path directory;

  private Recall recall() {
    return OnDisk.read(
        directory.resolve("log"),
        Histories.of(new Random(9)).log(),
        reading -> {
          Survey survey = new Survey(reading, "TW-1");
          return survey.recall(survey.finding(OptionalLong.empty()).orElseThrow());
        });
  }

  @Test
  void everyJointThatMayBeOutStandsThereInTheOrderOfTheCallBack() throws IOException {
    Recall recall = recall();
    assertThat(recall.joints()).filteredOn(j -> j.outlook().isOut()).hasSizeGreaterThan(3);
    byte[] pdf = CallBack.render(recall, Paper.A4, SOURCE);
    String text;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      text = new PDFTextStripper().getText(document);
    }
    int after = text.indexOf("OUT BY");
    for (Rejudged joint : recall.joints()) {
      if (joint.outlook().isOut()) {
        int at =
            text.indexOf(
                joint.touch().unit()
                    + " "
                    + joint.touch().job()
                    + " "
                    + joint.touch().fastener()
                    + " ",
                after);
        assertThat(at).as(joint.toString()).isGreaterThan(after);
        after = at;
      }
    }
    assertThat(text)
        .contains("Torque is not clamp load")
        .contains(
            "Made on 2026-12-01 from the log witnessmark.local/log/0123456789abcdef as it was")
        .contains(
            "Witnessmark test · made 2026-12-01 · witnessmark.local/log/0123456789abcdef · 68")
        .contains(String.join(", ", recall.units()));
    assertThat(CallBack.render(recall, Paper.A4, SOURCE)).isEqualTo(pdf);
  }
}
