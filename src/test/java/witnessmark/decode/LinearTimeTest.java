package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The largest inputs, made to be slow, within two seconds of this thread's processor time: other
 * load on the machine does not count.
 */
class LinearTimeTest {
  private static final int SIZE = 4 * 1024 * 1024;
  private static final Duration BOUND = Duration.ofSeconds(2);

  private static void assertBounded(Runnable work) {
    ThreadMXBean threads = ManagementFactory.getThreadMXBean();
    long before = threads.getCurrentThreadCpuTime();
    work.run();
    assertThat(Duration.ofNanos(threads.getCurrentThreadCpuTime() - before)).isLessThan(BOUND);
  }

  static Stream<String> payloads() {
    return Stream.of(
        "[" + "[],".repeat(SIZE / 3 - 1) + "[]]",
        "[[" + "0,".repeat(SIZE / 2 - 3) + "0]]",
        "[".repeat(SIZE),
        "{\"a\":".repeat(SIZE / 5),
        "{\"torque\":" + "9".repeat(SIZE - 12) + "}",
        "{\"torque\":1e" + "9".repeat(SIZE - 14) + "}",
        "{\"torque\":\"" + "9".repeat(SIZE - 14) + "\"}",
        "{\"torque\":\"" + "\\u0031".repeat(SIZE / 6 - 4) + "\"}",
        "{\"" + "n".repeat(SIZE - 8) + "\":1}",
        "{" + "\"n\":1,".repeat(SIZE / 6 - 1) + "\"n\":1}",
        "{" + colliding() + "\"z\":1}",
        "[" + "\"\",".repeat(9_999) + "\"" + "x".repeat(SIZE - 40_000) + "\"]",
        " ".repeat(SIZE),
        "\u0000".repeat(SIZE));
  }

  /** Many names of one hash code: "Aa" and "BB" have the same, and so have their sequences. */
  private static String colliding() {
    StringBuilder names = new StringBuilder();
    for (int i = 0; i < 1 << 16; i++) {
      names.append('"');
      for (int bit = 0; bit < 16; bit++) {
        names.append((i >> bit & 1) == 0 ? "Aa" : "BB");
      }
      names.append("\":1,");
    }
    return names.toString();
  }

  @ParameterizedTest
  @MethodSource("payloads")
  void noPayloadIsSlow(String text) throws IOException {
    byte[] payload = text.getBytes(StandardCharsets.UTF_8);
    assertThat(payload.length).isLessThanOrEqualTo(SIZE);
    ProfileDecoder pointers = new ProfileDecoder(DemoProfilesTest.profile("nested-json"));
    for (Function<byte[], List<Decoded>> decoder :
        List.<Function<byte[], List<Decoded>>>of(
            Messages::torque, Messages::scan, pointers::decode)) {
      assertBounded(
          () -> assertThat(decoder.apply(payload)).hasOnlyElementsOfType(Malformed.class));
    }
  }

  static Stream<FrameRule> rules() {
    return Stream.of(
        new FrameRule.EndedBy(FramerTest.bytes("aaaaaaaaaaaaaaab"), 65_536),
        new FrameRule.Between(
            FramerTest.bytes("aaaaaaaaaaaaaaab"), FramerTest.bytes("aaaaaaaaaaaaaaac"), 256),
        new FrameRule.EndedBy(FramerTest.bytes("a"), 1),
        new FrameRule.OfLength(1));
  }

  @ParameterizedTest
  @MethodSource("rules")
  void noLineIsSlow(FrameRule rule) {
    byte[] line = "a".repeat(4096).getBytes(StandardCharsets.US_ASCII);
    assertBounded(
        () -> {
          Framer framer = new Framer(rule);
          long bytes = 0;
          for (int chunk = 0; chunk < SIZE / line.length; chunk++) {
            bytes += bytes(framer.feed(line, line.length));
          }
          assertThat(bytes + bytes(framer.end())).isIn(0L, (long) SIZE);
        });
  }

  /** How many bytes the frames hold; of lines of nothing but ends none do. */
  private static long bytes(List<Frame> frames) {
    return frames.stream()
        .mapToLong(f -> f instanceof Broken b ? b.sample().length() : ((Whole) f).bytes().length)
        .sum();
  }

  static Stream<String> patterns() {
    return Stream.of("(x+)+y", "(?P<over>.*)(?P<sum>.*)y", "((x?){30}){30}y");
  }

  @ParameterizedTest
  @MethodSource("patterns")
  void noFrameIsSlowByItsPattern(String pattern) {
    Shape shape = new Shape(ProfilePattern.compile(pattern));
    assertBounded(() -> assertThat(shape.pattern().matches("x".repeat(65_536))).isFalse());
  }
}
