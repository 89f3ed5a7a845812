package wrenchsim;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.awaitility.Awaitility;

/** A real broker on a free port of this computer, that keeps its sessions over a restart. */
final class Mosquitto implements AutoCloseable {
  private final Path configuration;
  private final int port;
  private Process process;

  Mosquitto(Path directory) throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = socket.getLocalPort();
    }
    configuration = directory.resolve("mosquitto.conf");
    Path store = Files.createDirectories(directory.resolve("broker"));
    // As root it would change to a user that cannot write here; as anybody else it ignores "user".
    Files.writeString(
        configuration,
        """
        listener %d 127.0.0.1
        allow_anonymous true
        persistence true
        persistence_location %s/
        max_queued_messages 0
        user root
        """
            .formatted(port, store));
    start();
  }

  void start() throws IOException {
    String program =
        Files.exists(Path.of("/usr/sbin/mosquitto")) ? "/usr/sbin/mosquitto" : "mosquitto";
    process =
        new ProcessBuilder(program, "-c", configuration.toString())
            .redirectErrorStream(true)
            .redirectOutput(configuration.resolveSibling("mosquitto.log").toFile())
            .start();
    Awaitility.await()
        .atMost(Duration.ofSeconds(20))
        .ignoreExceptions()
        .until(
            () -> {
              new Socket(InetAddress.getLoopbackAddress(), port).close();
              return true;
            });
  }

  /** Ends it in order, so that what it has acknowledged is on its disk. */
  void stop() {
    process.destroy();
    process.onExit().join();
  }

  String uri() {
    return "tcp://127.0.0.1:" + port;
  }

  @Override
  public void close() {
    process.destroy();
    process.onExit().join();
  }
}
