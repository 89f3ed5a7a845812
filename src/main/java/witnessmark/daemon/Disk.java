package witnessmark.daemon;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.ledger.LedgerFiles;

/** The disk that the log lies on: what speaks against recording, and what soon will. */
final class Disk {
  private static final Logger LOG = LoggerFactory.getLogger(Disk.class);

  /** With less than this a write may fail any moment. */
  private static final long NOTHING = 64 << 10;

  /** Four times as much as the WAL file grows to while everybody reads in short transactions. */
  private static final long LONG_WAL = 64 << 20;

  private static final long MB = 1_000_000;

  private final LedgerFiles files;
  private final long keepFree;
  private final AtomicBoolean warned = new AtomicBoolean();

  /**
   * @param keepFree bytes; with less of them free, the disk is told to be nearly full
   */
  Disk(LedgerFiles files, long keepFree) {
    this.files = files;
    this.keepFree = keepFree;
  }

  /** Whether recording might fail now. */
  boolean doubtful() {
    warning();
    return !Files.isWritable(files.database()) || free() < NOTHING;
  }

  /** What will be in the way of recording; said in the log once when it begins and ceases. */
  Optional<String> warning() {
    Optional<String> warning = nearlyFull().or(this::longWal);
    if (warned.getAndSet(warning.isPresent()) != warning.isPresent()) {
      warning.ifPresentOrElse(
          w -> LOG.atWarn().addKeyValue("detail", w).log("disk"),
          () -> LOG.atInfo().addKeyValue("free", size(free())).log("disk as it should be"));
    }
    return warning;
  }

  private Optional<String> nearlyFull() {
    long free = free();
    return Optional.of(
            "the disk of "
                + files.directory()
                + " has "
                + size(free)
                + " left, less than keep-free = "
                + size(keepFree)
                + "; make room before nothing can be recorded")
        .filter(w -> free < keepFree);
  }

  private Optional<String> longWal() {
    long wal = length(files.wal());
    return Optional.of(
            files.wal()
                + " has grown to "
                + size(wal)
                + ": some program has been reading the log without an end; end it, or it fills the"
                + " disk")
        .filter(w -> wal > LONG_WAL);
  }

  /** Free bytes; as if there were plenty where there is no directory: the log itself tells that. */
  private long free() {
    long free = files.directory().toFile().getUsableSpace();
    return free == 0 && !Files.isDirectory(files.directory()) ? Long.MAX_VALUE : free;
  }

  private static long length(Path file) {
    try {
      return Files.size(file);
    } catch (IOException e) {
      return 0;
    }
  }

  private static String size(long bytes) {
    return bytes < MB ? bytes / 1000 + " kB" : bytes / MB + " MB";
  }
}
