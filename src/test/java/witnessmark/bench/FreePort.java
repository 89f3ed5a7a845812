package witnessmark.bench;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;

/** A TCP port of 127.0.0.1 that nobody used a moment ago. */
public final class FreePort {
  private FreePort() {}

  /** Returns a port number the operating system just gave out and took back. */
  public static int next() {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
