package witnessmark.link.mqtt;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;

/**
 * Accepts every connection and answers its subscriptions in turn with given codes, which the real
 * broker at hand never does. Bytes as in MQTT 3.1.1, sections 3.2 and 3.9, from memory.
 */
final class GrudgingBroker implements AutoCloseable {
  private final ServerSocket server;
  private final int[] grants;

  GrudgingBroker(int... grants) {
    this.grants = grants;
    try {
      server = new ServerSocket(0, 5, InetAddress.getByName("127.0.0.1"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Thread thread = new Thread(this::run, "grudging-broker");
    thread.setDaemon(true);
    thread.start();
  }

  String url() {
    return "tcp://127.0.0.1:" + server.getLocalPort();
  }

  @Override
  public void close() throws IOException {
    server.close();
  }

  private void run() {
    while (!server.isClosed()) {
      try (Socket socket = server.accept()) {
        DataInputStream in = new DataInputStream(socket.getInputStream());
        packet(in);
        socket.getOutputStream().write(new byte[] {0x20, 2, 0, 0});
        for (int grant : grants) {
          byte[] subscribe = packet(in);
          socket
              .getOutputStream()
              .write(new byte[] {(byte) 0x90, 3, subscribe[0], subscribe[1], (byte) grant});
        }
        packet(in);
      } catch (IOException nextOne) {
        // the link went away, or the test is over
      }
    }
  }

  /** The body of the next packet, of at most 16 383 bytes. */
  private static byte[] packet(DataInputStream in) throws IOException {
    in.readByte();
    int length = in.readUnsignedByte();
    if (length > 127) {
      length = length - 128 + 128 * in.readUnsignedByte();
    }
    byte[] body = new byte[length];
    in.readFully(body);
    return body;
  }
}
