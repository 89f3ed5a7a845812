package witnessmark.bench;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;

/** A service manager's end of the datagram socket: what is sent to it is kept in a file. */
public final class NotifySocket implements AutoCloseable {
  private final Path socket;
  private final Path told;
  private final Process socat;

  private NotifySocket(Path socket, Path told, Process socat) {
    this.socket = socket;
    this.told = told;
    this.socat = socat;
  }

  /** Listens at a new socket in a directory. */
  public static NotifySocket in(Path directory) throws IOException {
    Path socket = directory.resolve("notify");
    Path told = Files.createFile(directory.resolve("told"));
    Process socat =
        new ProcessBuilder("socat", "-u", "UNIX-RECV:" + socket, "OPEN:" + told + ",append")
            .inheritIO()
            .start();
    await().until(() -> Files.exists(socket));
    return new NotifySocket(socket, told, socat);
  }

  public Path path() {
    return socket;
  }

  /** What was told so far, one assignment a line. */
  public List<String> lines() {
    try {
      return Arrays.asList(Files.readString(told).split("\n"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** How often a line was told. */
  public long count(String line) {
    return lines().stream().filter(line::equals).count();
  }

  @Override
  public void close() {
    socat.destroy();
    Exit.await(socat);
  }
}
