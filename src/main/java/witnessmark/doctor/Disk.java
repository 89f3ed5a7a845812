package witnessmark.doctor;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** The disk under the data directory. */
final class Disk {
  static final String AREA = "disk";

  /** Some hundred thousand entries. */
  private static final long LITTLE = 1L << 30;

  private static final long NEXT_TO_NOTHING = 50L << 20;
  private static final int PROBE_BYTES = 65_536;

  /**
   * The write-ahead log needs memory that all its users share (sqlite.org/wal.html; from memory).
   */
  private static final Set<String> NETWORK =
      Set.of(
          "nfs", "nfs4", "cifs", "smb3", "smbfs", "9p", "afs", "ceph", "glusterfs", "fuse.sshfs");

  private Disk() {}

  static List<Finding> look(Path directory) {
    List<Finding> found = new ArrayList<>();
    try {
      FileStore store = Files.getFileStore(directory);
      found.addAll(kind(directory, store.type()));
      found.add(room(directory, store.getUsableSpace()));
    } catch (IOException e) {
      found.add(
          Finding.bad(
              AREA,
              "The disk of " + directory + " cannot be looked at: " + Directory.why(e) + ".",
              "Look yourself: df -h " + directory));
    }
    found.add(written(directory));
    return found;
  }

  static List<Finding> kind(Path directory, String type) {
    if (NETWORK.contains(type.toLowerCase(Locale.ROOT))) {
      return List.of(
          Finding.bad(
              AREA,
              directory
                  + " is on a network file system ("
                  + type
                  + "), where SQLite's log is not safe.",
              "Stop the daemon, move the directory to a disk of this computer, and name it with --data."));
    }
    if (type.equals("tmpfs") || type.equals("ramfs")) {
      return List.of(
          Finding.warn(
              AREA,
              directory
                  + " is in memory ("
                  + type
                  + "): it is gone when this computer is switched off.",
              "For real work, move it to a disk and name it with --data."));
    }
    return List.of();
  }

  static Finding room(Path directory, long free) {
    String found = (free >> 20) + " MiB are free on the disk of " + directory;
    String next =
        "See what takes the room: du -xh --max-depth=2 " + mount(directory) + " | sort -h | tail";
    if (free < NEXT_TO_NOTHING) {
      return Finding.bad(
          AREA, found + ".", next + ". Never remove ledger.db-wal: it is part of the log.");
    }
    return free < LITTLE ? Finding.warn(AREA, found + ".", next) : Finding.good(AREA, found + ".");
  }

  /** Where the disk that the directory is on is mounted. */
  static Path mount(Path directory) {
    try {
      Path at = directory.toRealPath();
      Object device = Files.getAttribute(at, "unix:dev");
      while (at.getParent() != null
          && Files.getAttribute(at.getParent(), "unix:dev").equals(device)) {
        at = at.getParent();
      }
      return at;
    } catch (IOException | UnsupportedOperationException e) {
      return directory;
    }
  }

  /** Whether there is so little room that nothing works. */
  static boolean full(Path directory) {
    try {
      return Files.getFileStore(directory).getUsableSpace() < PROBE_BYTES;
    } catch (IOException e) {
      return false;
    }
  }

  /** Rights, read-only mounts and full disks all show in the one thing that counts. */
  private static Finding written(Path directory) {
    Path probe = null;
    try {
      probe = Files.createTempFile(directory, "doctor", ".tmp");
      try (FileChannel channel = FileChannel.open(probe, StandardOpenOption.WRITE)) {
        channel.write(ByteBuffer.allocate(PROBE_BYTES));
        channel.force(true);
      }
      return Finding.good(AREA, "A file was written there, and removed again.");
    } catch (IOException e) {
      return Finding.bad(
          AREA,
          "Nothing can be written to " + directory + ": " + Directory.why(e) + ".",
          next(directory, Directory.why(e)));
    } finally {
      remove(probe);
    }
  }

  private static String next(Path directory, String why) {
    if (why.contains("no space")) {
      return "Make room: df -h "
          + directory
          + ". Meanwhile a broker keeps what was sent with QoS 1; what came over serial lines, or"
          + " with QoS 0, and finds no room in the queue is lost and counted (notkept in health).";
    }
    if (why.contains("read-only")) {
      return "Find out why it was mounted so (dmesg | tail), then: mount -o remount,rw "
          + mount(directory);
    }
    return "Run as the user who owns it: ls -ld " + directory;
  }

  private static void remove(Path probe) {
    try {
      if (probe != null) {
        Files.deleteIfExists(probe);
      }
    } catch (IOException e) {
      return; // an empty file of that name does no harm
    }
  }
}
