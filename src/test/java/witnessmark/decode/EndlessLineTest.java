package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A serial line that sends and sends and never ends a frame. */
class EndlessLineTest {
  private static final int CHUNKS = 2_000;

  @Test
  void takesNoRoomAndIsDescribedByHeadLengthAndHashWhenItEnds() throws Exception {
    byte[] chunk = new byte[16 << 10];
    Arrays.fill(chunk, (byte) 'x');
    Bytes start = FramerTest.bytes("\u0002");
    Bytes end = FramerTest.bytes("\r\n");
    for (FrameRule rule :
        List.of(new FrameRule.EndedBy(end, 256), new FrameRule.Between(start, end, 65_536))) {
      ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
      long before = threads.getCurrentThreadAllocatedBytes();
      Framer framer = new Framer(rule);
      List<Frame> frames = new ArrayList<>();
      MessageDigest digest = MessageDigest.getInstance("SHA-256");
      for (int i = 0; i < CHUNKS; i++) {
        frames.addAll(framer.feed(chunk, chunk.length));
        digest.update(chunk);
      }
      frames.addAll(framer.end());
      long allocated = threads.getCurrentThreadAllocatedBytes() - before;
      assertThat(frames).hasSize(1);
      Sample sample = ((Broken) frames.get(0)).sample();
      assertThat(sample.length()).isEqualTo((long) CHUNKS * chunk.length);
      assertThat(sample.sha256()).isEqualTo(HexFormat.of().formatHex(digest.digest()));
      assertThat(sample.head()).hasSize(Sample.KEPT).containsOnly('x');
      assertThat(allocated).as("bytes for 32 MB").isLessThan(2 << 20);
    }
  }
}
