package witnessmark.config;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * How checkpoints of the log are handed outside.
 *
 * @param publishEvery at least so long between two at a broker
 * @param drop the directory that they are dropped into, where the file names one
 * @param every so long between two drops
 */
public record CheckpointConfig(Duration publishEvery, Optional<Path> drop, Duration every) {
  /** What holds where the file says nothing: published once a minute, dropped nowhere. */
  public static final CheckpointConfig USUAL =
      new CheckpointConfig(Duration.ofSeconds(60), Optional.empty(), Duration.ofHours(24));
}
