package witnessmark.config;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import witnessmark.toml.Section;

/** Reads the {@code [checkpoints]} section. */
final class CheckpointSection {
  private CheckpointSection() {}

  static CheckpointConfig read(ConfigFile file, Section s) {
    Optional<Duration> publish = s.read("publish-every", Durations.ALLOWED, Durations::parse);
    Optional<Path> drop = s.text("drop").map(file::path);
    Optional<Duration> every = s.read("every", Durations.LONG, Durations::parseLong);
    drop.filter(d -> !Files.isDirectory(d))
        .ifPresent(
            d ->
                s.fault(
                    "drop",
                    "there is no directory " + d,
                    "make it, best on another machine's disk, or name one that exists"));
    if (every.isPresent() && drop.isEmpty()) {
      s.fault("every", "nothing is dropped anywhere", "name the directory with drop");
    }
    s.finish();
    CheckpointConfig usual = CheckpointConfig.USUAL;
    return new CheckpointConfig(
        publish.orElse(usual.publishEvery()), drop, every.orElse(usual.every()));
  }
}
