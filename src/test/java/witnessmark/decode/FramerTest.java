package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FramerTest {
  private static final List<FrameRule> SMALL =
      List.of(
          new FrameRule.EndedBy(bytes("c"), 2),
          new FrameRule.EndedBy(bytes("bc"), 2),
          new FrameRule.EndedBy(bytes("bb"), 2),
          new FrameRule.EndedBy(bytes("bab"), 1),
          new FrameRule.Between(bytes("b"), bytes("c"), 2),
          new FrameRule.Between(bytes("ab"), bytes("bc"), 1),
          new FrameRule.Between(bytes("bb"), bytes("ca"), 1),
          new FrameRule.Between(bytes("ca"), bytes("bc"), 2),
          new FrameRule.OfLength(1),
          new FrameRule.OfLength(3));

  static Bytes bytes(String text) {
    return Bytes.of(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static Whole whole(String text) {
    return new Whole(text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static Broken broken(String reason, String text) {
    return new Broken(reason, Sample.of(text.getBytes(StandardCharsets.ISO_8859_1)));
  }

  /** The frames of a whole line, fed in one piece and closed. */
  private static List<Frame> frames(FrameRule rule, String line) {
    Framer framer = new Framer(rule);
    byte[] all = line.getBytes(StandardCharsets.ISO_8859_1);
    List<Frame> frames = new ArrayList<>(framer.feed(all, all.length));
    frames.addAll(framer.end());
    return frames;
  }

  @Test
  void anEndMarkCutsAndEmptyLinesCarryNothing() {
    FrameRule rule = new FrameRule.EndedBy(bytes("\r\n"), 8);
    assertThat(frames(rule, "one\r\n\r\ntwo\r\r\n")).containsExactly(whole("one"), whole("two\r"));
  }

  @Test
  void aFrameThatIsTooLongIsBrokenAndTheNextOneIsTaken() {
    FrameRule rule = new FrameRule.EndedBy(bytes("\r\n"), 8);
    assertThat(frames(rule, "12345678\r\n123456789\r\nok\r\n"))
        .containsExactly(
            whole("12345678"),
            broken("a frame of 9 bytes; at most 8 are allowed", "123456789\r\n"),
            whole("ok"));
  }

  @Test
  void bytesBeforeTheLineClosesAreBroken() {
    assertThat(frames(new FrameRule.EndedBy(bytes("\r\n"), 8), "ab\r"))
        .containsExactly(broken("the line closed 3 bytes into a frame", "ab\r"));
    assertThat(frames(new FrameRule.OfLength(3), "abcd"))
        .containsExactly(whole("abc"), broken("the line closed 1 bytes into a frame of 3", "d"));
  }

  @Test
  void noiseBetweenFramesIsBroken() {
    FrameRule rule = new FrameRule.Between(bytes("<<"), bytes(">>"), 8);
    assertThat(frames(rule, "x<y<<one>>z<<two>><<>>!<"))
        .containsExactly(
            broken("3 bytes between frames; a frame has a start and an end", "x<y"),
            whole("one"),
            broken("1 bytes between frames; a frame has a start and an end", "z"),
            whole("two"),
            broken("2 bytes before the line closed are no frame; a frame has a start", "!<"));
  }

  @Test
  void aStartWithinAFrameBeginsTheNext() {
    FrameRule rule = new FrameRule.Between(bytes("<<"), bytes(">>"), 8);
    assertThat(frames(rule, "<<lost<<two>><<clo"))
        .containsExactly(
            broken("a frame was cut off after 6 bytes by the start of the next", "<<lost"),
            whole("two"),
            broken("the line closed 5 bytes into a frame", "<<clo"));
  }

  @Test
  void afterTheLineClosedTheNextByteStartsAnew() {
    Framer framer = new Framer(new FrameRule.Between(bytes("<"), bytes(">"), 8));
    framer.feed("<ha".getBytes(StandardCharsets.US_ASCII), 3);
    assertThat(framer.end()).hasSize(1);
    assertThat(framer.end()).isEmpty();
    assertThat(framer.feed("<lf>".getBytes(StandardCharsets.US_ASCII), 4))
        .containsExactly(whole("lf"));
  }

  @Test
  void onlyTheGivenLengthOfAChunkIsTaken() {
    Framer framer = new Framer(new FrameRule.EndedBy(bytes("\n"), 8));
    byte[] chunk = "a\nb\n".getBytes(StandardCharsets.US_ASCII);
    assertThat(framer.feed(chunk, 2)).containsExactly(whole("a"));
  }

  /** Every line of up to seven letters of three, in every partition, by every small rule. */
  @Test
  void everyPartitionOfEverySmallLineGivesTheSameFrames() {
    for (FrameRule rule : SMALL) {
      for (int length = 0; length <= 7; length++) {
        int lines = (int) Math.pow(3, length);
        for (int code = 0; code < lines; code++) {
          everyPartition(rule, line(code, length));
        }
      }
    }
  }

  private static byte[] line(int code, int length) {
    byte[] line = new byte[length];
    for (int i = 0; i < length; i++, code /= 3) {
      line[i] = (byte) ('a' + code % 3);
    }
    return line;
  }

  private static void everyPartition(FrameRule rule, byte[] line) {
    List<Frame> expected = ReferenceFramer.frames(rule, line);
    for (int cuts = 0; cuts < 1 << Math.max(0, line.length - 1); cuts++) {
      Framer framer = new Framer(rule);
      List<Frame> frames = new ArrayList<>();
      int from = 0;
      for (int to = 1; to <= line.length; to++) {
        if (to == line.length || (cuts >> to - 1 & 1) == 1) {
          frames.addAll(framer.feed(Arrays.copyOfRange(line, from, to), to - from));
          from = to;
        }
      }
      frames.addAll(framer.end());
      if (!frames.equals(expected)) {
        assertThat(frames)
            .as("%s, %s, cuts %s", rule, new String(line, StandardCharsets.US_ASCII), cuts)
            .isEqualTo(expected);
      }
    }
  }

  @Test
  void randomPartitionsOfLongLinesGiveTheSameFrames() {
    List<FrameRule> rules =
        List.of(
            new FrameRule.EndedBy(bytes("\r\n"), 5000),
            new FrameRule.EndedBy(bytes("\n"), 100),
            new FrameRule.Between(bytes("\u0002"), bytes("\u0003\r\n"), 5000),
            new FrameRule.Between(bytes("\u0002"), bytes("\n"), 100),
            new FrameRule.OfLength(4500));
    for (long seed = 1; seed <= 40; seed++) {
      Random random = new Random(seed);
      byte[] line = longLine(random);
      for (FrameRule rule : rules) {
        assertThat(randomPartition(rule, line, random))
            .as("seed %s, %s", seed, rule)
            .isEqualTo(ReferenceFramer.frames(rule, line));
      }
    }
  }

  private static byte[] longLine(Random random) {
    byte[] line = new byte[60_000];
    random.nextBytes(line);
    for (int marks = random.nextInt(60); marks > 0; marks--) {
      byte[] mark =
          List.of("\r\n", "\u0003\r\n", "\u0002")
              .get(random.nextInt(3))
              .getBytes(StandardCharsets.US_ASCII);
      System.arraycopy(mark, 0, line, random.nextInt(line.length - 3), mark.length);
    }
    // Otherwise random bytes would end every frame within some hundred bytes.
    int quiet = random.nextInt(line.length);
    for (int i = quiet; i < line.length; i++) {
      if (line[i] < ' ' && random.nextInt(50) > 0) {
        line[i] = 'x';
      }
    }
    return line;
  }

  private static List<Frame> randomPartition(FrameRule rule, byte[] line, Random random) {
    Framer framer = new Framer(rule);
    List<Frame> frames = new ArrayList<>();
    for (int from = 0; from < line.length; ) {
      int to = Math.min(line.length, from + 1 + random.nextInt(2000));
      frames.addAll(framer.feed(Arrays.copyOfRange(line, from, to), to - from));
      from = to;
    }
    frames.addAll(framer.end());
    return frames;
  }
}
