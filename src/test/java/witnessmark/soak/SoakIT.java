package witnessmark.soak;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The short form: long enough to lose a reading, too short to see a slow leak. */
class SoakIT {
  @TempDir Path directory;

  @Test
  void nothingIsLostAndNothingGrowsUnderAThousandTimesTheShopsPace() throws Exception {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    PrintStream out = System.out;
    System.setOut(new PrintStream(PrintStream.nullOutputStream()));
    try {
      assertThat(new Soak(directory, new PrintStream(said, true)).run(Duration.ofSeconds(30)))
          .as(said::toString)
          .isEmpty();
    } finally {
      System.setOut(out);
    }
  }
}
