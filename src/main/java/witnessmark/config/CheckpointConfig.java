package witnessmark.config;

import java.io.IOException;
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

  /**
   * Whether they are dropped into that data directory or below it, where whoever loses or rewrites
   * the log has them, too.
   */
  public boolean within(Path data) {
    return drop.filter(d -> real(d).startsWith(real(data))).isPresent();
  }

  private static Path real(Path path) {
    try {
      return path.toRealPath();
    } catch (IOException e) {
      return path.toAbsolutePath().normalize(); // it is not there
    }
  }
}
