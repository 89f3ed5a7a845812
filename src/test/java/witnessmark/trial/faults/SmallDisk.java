package witnessmark.trial.faults;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * A disk of a few megabytes (tmpfs) in the place of a data directory, in a mount namespace of its
 * own that goes with this process.
 */
public final class SmallDisk implements AutoCloseable {
  private final Process holder;
  private final Path place;
  private final Path working;

  /** The directory's files are copied onto the new disk. */
  public SmallDisk(Path place, int kilobytes) throws IOException, InterruptedException {
    this.place = place;
    this.working = place.getParent();
    Path before = working.resolve("before");
    String script =
        "cp -a \"$1\" \"$2\" && mount -t tmpfs -o size="
            + kilobytes
            + "k none \"$1\""
            + " && cp -a \"$2\"/. \"$1\" && echo ready && exec sleep 100000";
    holder =
        new ProcessBuilder(
                "unshare", "-rm", "sh", "-c", script, "sh", place.toString(), before.toString())
            .redirectErrorStream(true)
            .start();
    String said = holder.inputReader().readLine();
    if (!"ready".equals(said)) {
      throw new IllegalStateException(
          "no disk can be mounted in a user namespace of its own (unshare -rm): "
              + said
              + ". This trial needs a kernel that allows it: sysctl kernel.unprivileged_userns_clone=1,"
              + " or a container run with --security-opt seccomp=unconfined.");
    }
  }

  /** Runs a command where the disk is. */
  public List<String> prefix() {
    return List.of(
        "nsenter",
        "-t",
        "" + holder.pid(),
        "-U",
        "-m",
        "--preserve-credentials",
        "sh",
        "-c",
        "cd " + working + " && exec \"$@\"",
        "sh");
  }

  private Path outside(String name) {
    return Path.of("/proc/" + holder.pid() + "/root" + place).resolve(name);
  }

  /** Fills it to the last byte. */
  public void fill() throws IOException {
    try (OutputStream out = Files.newOutputStream(outside("filler"))) {
      byte[] block = new byte[512];
      for (int i = 0; i < 1 << 20; i++) {
        out.write(block);
      }
    } catch (IOException e) {
      return; // full
    }
    throw new IllegalStateException("the disk does not fill");
  }

  /** Leaves so many kilobytes. */
  public void free() throws IOException {
    Files.deleteIfExists(outside("filler"));
  }

  /** Sets it read-only, or writable again; its files must not be open for writing. */
  int mount(String how) throws IOException, InterruptedException {
    List<String> line = new java.util.ArrayList<>(prefix());
    line.addAll(List.of("mount", "-o", "remount," + how, place.toString()));
    Process mount = new ProcessBuilder(line).redirectErrorStream(true).start();
    mount.waitFor(20, TimeUnit.SECONDS);
    return mount.exitValue();
  }

  @Override
  public void close() {
    holder.destroyForcibly();
  }
}
