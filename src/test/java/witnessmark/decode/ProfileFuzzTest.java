package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** Malformed lines, by default 100 000 a profile; {@code -Dfuzz.count=N} sets another number. */
class ProfileFuzzTest {
  private static final String LINE =
      "W|TW-0417|123|2026-11-25T10:02:03.120Z|32.54|N.m|41.2|cw|7D85";
  private static final String JSON =
      "[{\"tool\":{\"id\":\"TW-0419\"},\"seq\":7,\"peak\":{\"value\":32.50,\"unit\":\"Nm\"}},"
          + "{\"tool\":{\"id\":\"TW-0419\"},\"seq\":8,\"peak\":{\"value\":24,\"unit\":\"ft-lb\"}}]";

  @Test
  void noLineOfCheckedColumnsEscapes() throws IOException {
    fuzz(1, DemoProfilesTest.profile("demo-line"), LINE);
  }

  @Test
  void noLineOfUncheckedColumnsEscapes() throws IOException {
    Profile p = DemoProfilesTest.profile("demo-line");
    fuzz(2, with(p, p.frame().orElseThrow(), true), LINE);
  }

  @Test
  void noLineOfAPatternEscapes() throws IOException {
    fuzz(
        3,
        DemoProfilesTest.profile("comma-line"),
        "Nr 00123 25.11.2026 11:02:03 R  32,54 NM  41,2 Grad");
  }

  @Test
  void noLineOfJsonEscapes() throws IOException {
    FrameRule lines = new FrameRule.EndedBy(FramerTest.bytes("\n"), 1024);
    fuzz(4, with(DemoProfilesTest.profile("nested-json"), lines, false), JSON);
  }

  private static Profile with(Profile p, FrameRule frame, boolean unchecked) {
    return new Profile(
        p.name(),
        p.charset(),
        Optional.of(frame),
        unchecked ? Optional.empty() : p.checksum(),
        p.form(),
        p.values(),
        p.time(),
        p.poll(),
        p.reply());
  }

  private static void fuzz(long seed, Profile profile, String good) {
    Random random = new Random(seed);
    Mutations mutations = new Mutations(random);
    FrameRule rule = profile.frame().orElseThrow();
    Framer framer = new Framer(rule);
    ProfileDecoder decoder = new ProfileDecoder(profile);
    byte[] content = good.getBytes(profile.charset());
    List<Decoded> expected = decoder.decode(content);
    assertThat(expected).allMatch(Torqued.class::isInstance);
    for (int malformed = 0, round = 0; malformed < MessagesFuzzTest.COUNT; round++) {
      int at = round;
      Supplier<String> where = () -> "seed " + seed + ", round " + at;
      byte[] line = line(rule, mutations.of(content), content);
      List<Frame> frames = chunked(framer, line, random);
      MessagesFuzzTest.check(frames.equals(ReferenceFramer.frames(rule, line)), where, frames);
      for (Frame frame : frames) {
        malformed += describes(frame, decoder, line, where);
      }
      Frame last = frames.get(frames.size() - 1);
      MessagesFuzzTest.check(last.equals(new Whole(content)), where, last);
      MessagesFuzzTest.check(decoder.decode(content).equals(expected), where, "the good message");
    }
  }

  private static int describes(
      Frame frame, ProfileDecoder decoder, byte[] line, Supplier<String> where) {
    if (frame instanceof Broken broken) {
      MessagesFuzzTest.check(Sha.describesPart(broken.sample(), line), where, broken);
      return 1;
    }
    byte[] content = ((Whole) frame).bytes();
    int malformed = 0;
    for (Decoded decoded : decoder.decode(content)) {
      malformed += MessagesFuzzTest.describes(decoded, content, where);
    }
    return malformed;
  }

  /** The bad content, framed, or where a start mark allows it cut off; then the good, framed. */
  private static byte[] line(FrameRule rule, byte[] bad, byte[] good) {
    ByteArrayOutputStream line = new ByteArrayOutputStream();
    byte[] start = rule instanceof FrameRule.Between r ? r.start().toArray() : new byte[0];
    byte[] end =
        rule instanceof FrameRule.Between r
            ? r.end().toArray()
            : ((FrameRule.EndedBy) rule).end().toArray();
    boolean cut = start.length > 0 && bad.length % 2 == 0;
    for (byte[] part : List.of(start, bad, cut ? new byte[0] : end, start, good, end)) {
      line.writeBytes(part);
    }
    return line.toByteArray();
  }

  private static List<Frame> chunked(Framer framer, byte[] line, Random random) {
    List<Frame> frames = new ArrayList<>();
    for (int from = 0; from < line.length; ) {
      int to = Math.min(line.length, from + 1 + random.nextInt(64));
      frames.addAll(framer.feed(Arrays.copyOfRange(line, from, to), to - from));
      from = to;
    }
    return frames;
  }
}
