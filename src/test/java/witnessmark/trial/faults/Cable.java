package witnessmark.trial.faults;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import witnessmark.bench.PtyPair;

/** A wrench on a serial cable that sends each reading once, as docs/simulator-line.md has it. */
final class Cable implements Hand {
  private final PtyPair pair;
  private final String wrench;
  private long sent;

  Cable(Path directory, String wrench) {
    this.pair = PtyPair.plug(directory);
    this.wrench = wrench;
  }

  PtyPair pair() {
    return pair;
  }

  @Override
  public String wrench() {
    return wrench;
  }

  @Override
  public boolean keeps() {
    return false;
  }

  @Override
  public long sent() {
    return sent;
  }

  @Override
  public void send(int count) throws InterruptedException {
    for (int i = 0; i < count; i++) {
      pair.write(next());
      TimeUnit.MILLISECONDS.sleep(2);
    }
  }

  /** The next frame; counted as sent. */
  byte[] next() {
    return frame(wrench, ++sent).getBytes(US_ASCII);
  }

  /** The next frame, not counted: it is to be sent another time. */
  byte[] peek() {
    return frame(wrench, sent + 1).getBytes(US_ASCII);
  }

  /** What came back so far, or within that time. */
  String answers(Duration longest) {
    return new String(pair.read(1 << 20, longest), US_ASCII);
  }

  private static String frame(String wrench, long number) {
    String over = "W|%s|%d||%d.5|N.m|||".formatted(wrench, number, 20 + number % 60);
    over = over.substring(0, over.length() - 1);
    int crc = 0xFFFF;
    for (byte b : over.getBytes(US_ASCII)) {
      crc ^= b & 0xFF;
      for (int bit = 0; bit < 8; bit++) {
        crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xA001;
      }
    }
    return "%s|%04X\r\n".formatted(over, crc);
  }

  @Override
  public void close() {
    pair.close();
  }
}
