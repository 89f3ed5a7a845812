package witnessmark.decode;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import witnessmark.toml.FaultsException;
import witnessmark.toml.Section;
import witnessmark.toml.TomlFile;
import witnessmark.torque.Label;

/** Reads a profile file (docs/profile-format.md). */
public final class ProfileFile {
  private ProfileFile() {}

  /**
   * Reads the text of a profile file.
   *
   * @param fileName the name to show in faults
   * @throws FaultsException with every fault found
   */
  public static Profile parse(String fileName, String text) {
    TomlFile file = TomlFile.parse(fileName, text);
    Section root = file.root();
    Optional<Section> head = required(root, "profile", "write [profile] with a name");
    Optional<String> name =
        head.flatMap(
            h ->
                h.requiredRead(
                    "name",
                    "write name = \"...\", 1 to 64 printable characters",
                    n -> Label.check("profile name", n)));
    Charset charset = head.map(ProfileFile::charset).orElse(StandardCharsets.UTF_8);
    Optional<FrameRule> frame = root.section("frame").flatMap(s -> FrameSection.read(s, charset));
    Optional<Checksum> checksum = root.section("checksum").flatMap(ChecksumSection::read);
    Values values = root.section("values").map(ValuesSection::read).orElse(Values.NONE);
    Optional<MessageForm> form =
        required(
                root, "message", "write [message] with form = \"columns\", \"pattern\" or \"json\"")
            .flatMap(s -> MessageSection.read(s, values));
    Optional<TimeRule> time = root.section("time").flatMap(TimeSection::read);
    Optional<Poll> poll = root.section("poll").flatMap(s -> PollSection.read(s, charset));
    boolean scans = form.isPresent() && form.get().scans();
    Reply reply =
        root.section("reply").map(s -> ReplySection.read(s, charset, scans)).orElse(Reply.NONE);
    if (scans) {
      forReadings(root, "time", time.isPresent());
      forReadings(root, "values", !values.ofScans());
    }
    serialOnly(root, "poll");
    serialOnly(root, "reply");
    head.ifPresent(Section::finish);
    root.finish();
    file.orThrow();
    return new Profile(
        name.orElseThrow(),
        charset,
        frame,
        checksum,
        form.orElseThrow(),
        values,
        time,
        poll,
        reply);
  }

  private static Optional<Section> required(Section root, String key, String allowed) {
    if (!root.has(key)) {
      root.fault(key, "there is no [" + key + "]", allowed);
    }
    return root.section(key);
  }

  private static void serialOnly(Section root, String key) {
    if (root.has(key) && !root.has("frame")) {
      root.fault(
          key,
          "[" + key + "] is for serial lines, and there is no [frame]",
          "write [frame], or remove [" + key + "]");
    }
  }

  private static void forReadings(Section root, String key, boolean wrong) {
    if (wrong) {
      root.fault(
          key,
          "[" + key + "] is about readings, and this message gives scans",
          key.equals("values") ? "only a fixed operator is allowed" : "remove it");
    }
  }

  private static Charset charset(Section head) {
    return head.read("charset", "\"utf-8\" or \"latin1\" is allowed", ProfileFile::charset)
        .orElse(StandardCharsets.UTF_8);
  }

  private static Charset charset(String name) {
    if (name.equals("utf-8")) {
      return StandardCharsets.UTF_8;
    }
    if (name.equals("latin1")) {
      return StandardCharsets.ISO_8859_1;
    }
    throw new IllegalArgumentException("unknown charset \"" + name + "\"");
  }
}
