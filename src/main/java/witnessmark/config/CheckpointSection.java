package witnessmark.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import witnessmark.toml.Section;

/** Reads the {@code [checkpoints]} section. */
final class CheckpointSection {
  private CheckpointSection() {}

  /**
   * @param data the data directory, where the file names one
   */
  static CheckpointConfig read(ConfigFile file, Section s, Optional<Path> data) {
    Optional<Duration> publish = s.read("publish-every", Durations.ALLOWED, Durations::parse);
    Optional<Path> drop = s.read("drop", ConfigFile.PATH, file::path);
    Optional<Duration> every = s.read("every", Durations.LONG, Durations::parseLong);
    drop.filter(d -> !Files.isDirectory(d))
        .ifPresent(
            d ->
                s.fault(
                    "drop",
                    missing(d),
                    "make it, best on another machine's disk, or name one that exists"));
    if (every.isPresent() && !s.has("drop")) {
      s.fault("every", "nothing is dropped anywhere", "name the directory with drop");
    }
    s.finish();
    CheckpointConfig usual = CheckpointConfig.USUAL;
    CheckpointConfig read =
        new CheckpointConfig(
            publish.orElse(usual.publishEvery()), drop, every.orElse(usual.every()));
    data.filter(read::within)
        .ifPresent(
            d ->
                s.fault(
                    "drop",
                    drop.orElseThrow()
                        + " lies in the data directory "
                        + d
                        + ", so whoever loses or rewrites the log has the checkpoints, too",
                    "name a directory outside it, best on another machine's disk"));
    return read;
  }

  private static String missing(Path drop) {
    if (Files.exists(drop)) {
      return drop + " is not a directory";
    }
    return Files.notExists(drop)
        ? "there is no directory " + drop
        : drop + " cannot be looked at by this user";
  }
}
