package wrenchsim;

import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.awaitility.Awaitility;

/** The bridge's end of a virtual line, played by a test on the pseudo-terminal itself. */
final class LineEnd implements AutoCloseable {
  private final FileInputStream in;
  private final BufferedReader lines;
  private final FileOutputStream out;

  LineEnd(Path link) throws IOException {
    Awaitility.await().atMost(Duration.ofSeconds(20)).until(() -> Files.exists(link));
    out = new FileOutputStream(link.toFile());
    in = new FileInputStream(link.toFile());
    lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII));
  }

  /** A frame as it came. */
  record Frame(String text) {
    String wrench() {
      return text.split("\\|")[1];
    }

    long number() {
      return Long.parseLong(text.split("\\|")[2]);
    }

    /** The same reading as a torque message. */
    byte[] json() {
      String[] f = text.split("\\|", -1);
      return "{\"wrench\":\"%s\",\"event\":%s,\"torque\":\"%s\",\"unit\":\"%s\",\"angle\":\"%s\",\"direction\":\"%s\"}"
          .formatted(f[1], f[2], f[4], f[5], f[6], f[7])
          .getBytes(StandardCharsets.US_ASCII);
    }
  }

  /** The next frame; empty when the line is gone. */
  Optional<Frame> next() throws IOException {
    return Optional.ofNullable(lines.readLine()).map(Frame::new);
  }

  void answer(String line) throws IOException {
    out.write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
  }

  @Override
  public void close() throws IOException {
    out.close();
    in.close();
  }
}
