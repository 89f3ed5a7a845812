package witnessmark.ledger.sqlite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.stream.Stream;
import org.sqlite.SQLiteJDBCLoader;
import witnessmark.ledger.LedgerException;

/**
 * SQLite's own code, which the driver unpacks into a file before it can be loaded. A loaded file
 * needs no name any more: it is removed at once, so that a killed process leaves none behind.
 */
final class NativeLibrary {
  private static final String PLACE = "org.sqlite.tmpdir";
  private static final String PREFIX = "witnessmark-sqlite-";

  /** Far longer than unpacking and loading takes. */
  private static final long STALE_MINUTES = 10;

  private static boolean loaded;

  private NativeLibrary() {}

  /** Loads it, once a process. */
  static synchronized void load() {
    if (loaded) {
      return;
    }
    loaded = true;
    if (System.getProperty(PLACE) != null || System.getProperty("org.sqlite.lib.path") != null) {
      return; // somebody knows better
    }
    try {
      Path place = Files.createTempDirectory(PREFIX);
      System.setProperty(PLACE, place.toString());
      try {
        SQLiteJDBCLoader.initialize();
      } finally {
        // a crash before this line leaves the file behind, for a later start to find
        remove(place);
      }
      tidy(place.getParent());
    } catch (IOException | UncheckedIOException e) {
      System.clearProperty(PLACE); // the driver says what is wrong when it is asked to connect
    } catch (Exception e) { // as the driver declares it
      throw new LedgerException("SQLite's own code cannot be loaded: " + e.getMessage(), e);
    }
  }

  private static void tidy(Path parent) throws IOException {
    Instant stale = Instant.now().minus(STALE_MINUTES, ChronoUnit.MINUTES);
    try (DirectoryStream<Path> left = Files.newDirectoryStream(parent, PREFIX + "*")) {
      for (Path place : left) {
        if (Files.getLastModifiedTime(place).toInstant().isBefore(stale)) {
          remove(place);
        }
      }
    }
  }

  private static void remove(Path place) {
    try (Stream<Path> inside = Files.list(place)) {
      for (Path file : Stream.concat(inside.toList().stream(), Stream.of(place)).toList()) {
        Files.deleteIfExists(file);
      }
    } catch (IOException e) {
      return; // somebody else's, or a system that keeps a loaded file
    }
  }
}
