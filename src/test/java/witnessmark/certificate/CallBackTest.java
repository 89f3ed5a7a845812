package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
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

/** The call-back on paper. */
class CallBackTest {
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
    byte[] pdf = CallBack.render(recall, Paper.A4, "Witnessmark test");
    String text;
    try (PDDocument document = Loader.loadPDF(pdf)) {
      text = new PDFTextStripper().getText(document);
    }
    int after = text.indexOf("OUT BY");
    for (Rejudged joint : recall.joints()) {
      if (joint.outlook().isOut()) {
        int at = text.indexOf(joint.touch().unit() + " " + joint.touch().fastener() + " ", after);
        assertThat(at).as(joint.toString()).isGreaterThan(after);
        after = at;
      }
    }
    assertThat(text)
        .contains("Torque is not clamp load")
        .contains(String.join(", ", recall.units()));
    assertThat(CallBack.render(recall, Paper.A4, "Witnessmark test")).isEqualTo(pdf);
  }
}
