package witnessmark.doctor;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFileAttributes;
import java.nio.file.attribute.PosixFilePermission;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import witnessmark.config.CheckpointConfig;
import witnessmark.ledger.Growth;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.RewrittenException;
import witnessmark.ledger.sqlite.SqliteReading;

/** The directory that checkpoints are dropped into. */
final class Drops {
  static final String AREA = "checkpoints";

  private final Path drop;
  private final LedgerFiles files;
  private final List<Finding> found = new ArrayList<>();

  Drops(Path drop, LedgerFiles files) {
    this.drop = drop;
    this.files = files;
  }

  List<Finding> look(CheckpointConfig config) {
    if (!Files.isDirectory(drop)) {
      found.add(
          Finding.bad(
              AREA,
              drop + (Files.exists(drop) ? " is not a directory." : " is not there."),
              "Make it or mount it, or name another with drop in [checkpoints]."));
      return found;
    }
    if (config.within(files.directory())) {
      found.add(
          Finding.warn(
              AREA,
              drop
                  + " lies in the data directory, so whoever loses or rewrites the log has the"
                  + " checkpoints, too.",
              "Name a directory outside it with drop in [checkpoints], best on another machine's"
                  + " disk."));
    }
    try {
      writable();
      if (files.exist()) {
        contents();
      }
    } catch (IOException e) {
      found.add(
          Finding.bad(
              AREA,
              drop + " cannot be looked at: " + Directory.why(e) + ".",
              "Look as the user who runs the daemon: ls -la " + drop));
    }
    return found;
  }

  /** By whoever owns the log, where somebody else is looking. */
  private void writable() throws IOException {
    String owner = Directory.owner(files.directory());
    String next =
        "Let the user who runs the daemon write to it: chown "
            + owner
            + ": "
            + drop
            + ". For the service, allow it, too: ReadWritePaths="
            + drop;
    if (!Files.isWritable(drop)) {
      found.add(Finding.bad(AREA, "Nothing can be written to " + drop + ".", next));
    } else if (System.getProperty("user.name").equals("root") && !mayWrite(owner)) {
      found.add(Finding.bad(AREA, owner + " may not write to " + drop + ".", next));
    } else {
      found.add(Finding.good(AREA, drop + " can be written."));
    }
  }

  private boolean mayWrite(String owner) throws IOException {
    try {
      PosixFileAttributes its = Files.readAttributes(drop, PosixFileAttributes.class);
      Set<PosixFilePermission> may = its.permissions();
      boolean group = may.contains(PosixFilePermission.GROUP_WRITE); // who is in it is not known
      boolean others = may.contains(PosixFilePermission.OTHERS_WRITE);
      return owner.equals("root") || its.owner().getName().equals(owner) || group || others;
    } catch (UnsupportedOperationException e) {
      return true;
    }
  }

  /** Whether what was dropped before speaks for the log as it is now. */
  private void contents() throws IOException {
    List<Path> dropped;
    try (Stream<Path> all = Files.list(drop)) {
      dropped =
          all.filter(f -> Files.isRegularFile(f) && !f.getFileName().toString().startsWith("."))
              .sorted()
              .toList();
    }
    try (Reading reading = SqliteReading.open(files)) {
      for (Path file : dropped) {
        if (!agrees(reading, file)) {
          return; // those after it contradict the log as well
        }
      }
    } catch (LedgerException e) {
      return; // the log's own check says so
    }
    found.add(
        Finding.good(
            AREA,
            dropped.isEmpty()
                ? "None was dropped yet."
                : "The log goes on from all that were dropped there (" + dropped.size() + ")."));
  }

  private boolean agrees(Reading reading, Path file) throws IOException {
    try {
      Growth.since(reading, Files.readString(file));
      return true;
    } catch (RewrittenException e) {
      found.add(
          Finding.bad(
              AREA,
              file + ": " + e.getMessage(),
              "Find out what happened to the log: witnessmark ledger verify --since "
                  + drop
                  + " --data "
                  + files.directory()
                  + ". If these are another log's, name a directory for this log alone."));
    } catch (LedgerException e) {
      found.add(
          Finding.warn(
              AREA,
              file + " is no checkpoint, so ledger verify --since " + drop + " refuses them all.",
              "Move it elsewhere; the directory is for checkpoints of one log alone."));
    }
    return false;
  }
}
