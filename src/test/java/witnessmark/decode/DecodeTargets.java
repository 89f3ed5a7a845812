package witnessmark.decode;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import witnessmark.fuzz.Target;

/** What wrenches and scanners send, by cable and by broker. */
public final class DecodeTargets {
  private static final Path PROFILES = Path.of("demo-data/profiles");
  private static final List<String> OURS =
      List.of(
          "{\"wrench\":\"TW-0417\",\"event\":123,\"time\":\"2026-11-25T10:02:03.120Z\","
              + "\"torque\":\"32.54\",\"unit\":\"N.m\",\"angle\":41.2,\"direction\":\"cw\"}",
          "[{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":33,\"unit\":\"lbf.ft\",\"breakaway\":"
              + "\"30\",\"fastener\":\"carrier-left/3\",\"operator\":\"badge-07\"},\n {\"wrench\":"
              + "\"TW-0502\",\"torque\":\"8.1e0\",\"unit\":\"N.m\",\"direction\":\"ccw\"}]");
  private static final List<String> SCANS =
      List.of(
          "{\"scan\":\"carrier-left/3\",\"operator\":\"badge-07\"}",
          "[{\"scan\":\"ATR-26-0147\"},{\"scan\":\"W:NEXT\"}]");
  private static final List<String> NESTED =
      List.of(
          "[{\"tool\":{\"id\":\"TW-0419\"},\"seq\":7,\"peak\":{\"value\":32.50,\"unit\":\"Nm\"}},"
              + "{\"tool\":{\"id\":\"TW-0419\",\"badge\":\"badge-07\"},\"seq\":8,\"peak\":"
              + "{\"value\":24,\"unit\":\"ft-lb\"},\"turned\":[40.5]}]",
          "{\"tool\":{\"id\":\"TW-0419\"},\"at\":\"2026-11-25T10:02:03Z\",\"peak\":"
              + "{\"value\":\"32.50\",\"unit\":\"Nm\"}}");
  private static final List<String> JSON_WORDS =
      List.of(
          "\"wrench\":",
          "\"event\":",
          "\"time\":",
          "\"torque\":",
          "\"unit\":",
          "\"angle\":",
          "\"scan\":",
          "\"operator\":",
          "\"fastener\":",
          "\"breakaway\":",
          "\"direction\":\"ccw\"",
          "\"N.m\"",
          "\"lbf.ft\"",
          "\"tool\":{",
          "\"peak\":{",
          "\"turned\":[",
          "[[[[",
          "]]]]",
          "{\"a\":",
          "\\u0022",
          "\\ud83d",
          "2026-02-30T25:61:61Z",
          "-00:00",
          "9999-12-31T23:59:59Z",
          "1.2e1",
          "\"\":",
          "/*",
          "//",
          "\u2028");
  private static final List<String> LINE_WORDS =
      List.of(
          "\r\n",
          "\r",
          "\n",
          "|",
          "\u0002",
          "\u0003",
          "\u0002Nr ",
          "\u0003\r\n",
          "W|",
          "|cw|",
          "|7D85",
          "N.m",
          "NM",
          "32,54",
          " Grad",
          "25.11.2026",
          "11:02:03",
          "31.02.2026",
          "L",
          "R",
          "2026-11-25T10:02:03.120Z",
          "29.03.2026 02:30:00",
          "25.10.2026 02:30:00");

  private DecodeTargets() {}

  public static List<Target<?>> all() {
    try {
      return List.of(
          new Serial(profile("demo-line.toml"), sample("demo-line.bin")),
          new Serial(profile("comma-line.toml"), sample("comma-line.bin")),
          new Serial(profile("scanner-line.toml"), sample("scanner-line.bin")),
          new Serial(fixed(profile("scanner-line.toml")), sample("scanner-line.bin")),
          new Payload("own JSON, readings", 2600, OURS, Messages::torque),
          new Payload("own JSON, scans", 2000, SCANS, Messages::scan),
          new Payload(
              "mapped JSON",
              2000,
              NESTED,
              new ProfileDecoder(profile("nested-json.toml"))::decode));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  static Profile profile(String file) throws IOException {
    return ProfileFile.parse(file, Files.readString(PROFILES.resolve(file)));
  }

  private static byte[] sample(String file) throws IOException {
    return Files.readAllBytes(PROFILES.resolve(file));
  }

  /** The same scanner with frames of one length. */
  private static Profile fixed(Profile p) {
    return new Profile(
        "fixed-length",
        p.charset(),
        Optional.of(new FrameRule.OfLength(12)),
        p.checksum(),
        p.form(),
        p.values(),
        p.time(),
        p.poll(),
        p.reply());
  }

  /** A serial line, cut into frames and decoded. */
  private record Serial(Profile profile, byte[] sample) implements Target<Serial.Read> {
    record Read(List<Frame> frames, List<List<Decoded>> decoded) {}

    @Override
    public String name() {
      return "serial, " + profile.name();
    }

    @Override
    public int share() {
      return 600;
    }

    @Override
    public List<byte[]> samples() {
      return List.of(sample);
    }

    @Override
    public List<String> words() {
      return LINE_WORDS;
    }

    @Override
    public Allowance allowance() {
      return new Allowance(64 << 10, 2_000);
    }

    /** In pieces, as a line delivers; how many depends on the input alone. */
    @Override
    public Read parse(byte[] input) {
      Framer framer = new Framer(profile.frame().orElseThrow());
      ProfileDecoder decoder = new ProfileDecoder(profile);
      List<Frame> frames = new ArrayList<>();
      int piece = 1 + input.length % 37;
      byte[] chunk = new byte[piece];
      for (int from = 0; from < input.length; from += piece) {
        int length = Math.min(piece, input.length - from);
        System.arraycopy(input, from, chunk, 0, length);
        frames.addAll(framer.feed(chunk, length));
      }
      frames.addAll(framer.end());
      List<List<Decoded>> decoded = new ArrayList<>();
      for (Frame frame : frames) {
        decoded.add(
            frame instanceof Whole whole ? decoder.decode(whole.bytes()) : List.<Decoded>of());
      }
      return new Read(frames, decoded);
    }

    @Override
    public String judge(byte[] input, Read read) {
      if (!read.frames().equals(ReferenceFramer.frames(profile.frame().orElseThrow(), input))) {
        throw new AssertionError("other frames than the reference cuts");
      }
      StringBuilder kind = new StringBuilder();
      boolean taken = false;
      for (int i = 0; i < read.frames().size(); i++) {
        if (read.frames().get(i) instanceof Broken broken) {
          kind.append(' ').append(broken.reason());
        } else {
          byte[] content = ((Whole) read.frames().get(i)).bytes();
          taken |= Kept.all(read.decoded().get(i), content, profile.charset(), kind);
        }
      }
      return (taken ? "taken" : "refused") + kind;
    }
  }

  /** A broker's message. */
  private record Payload(
      String name, int share, List<String> texts, Function<byte[], List<Decoded>> decoder)
      implements Target<List<Decoded>> {
    private static final Charset CHARSET = StandardCharsets.UTF_8;

    @Override
    public List<byte[]> samples() {
      return texts.stream().map(t -> t.getBytes(CHARSET)).toList();
    }

    @Override
    public List<String> words() {
      return JSON_WORDS;
    }

    @Override
    public Allowance allowance() {
      return new Allowance(128 << 10, 2_000);
    }

    @Override
    public List<Decoded> parse(byte[] input) {
      return decoder.apply(input);
    }

    @Override
    public String judge(byte[] input, List<Decoded> answer) {
      StringBuilder kind = new StringBuilder();
      boolean taken = Kept.all(answer, input, CHARSET, kind);
      return (taken ? "taken" : "refused") + kind;
    }
  }
}
