package witnessmark.link.mqtt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import javax.net.SocketFactory;

/**
 * Makes sockets that send at once. Otherwise a verdict waits until the broker's computer has
 * confirmed the packet before it, which it puts off by some 40 ms (RFC 896 against RFC 1122,
 * section 4.2.3.2).
 */
final class PromptSockets extends SocketFactory {
  private final SocketFactory sockets;

  PromptSockets(SocketFactory sockets) {
    this.sockets = sockets;
  }

  static Socket prompt(Socket socket) throws IOException {
    socket.setTcpNoDelay(true);
    return socket;
  }

  @Override
  public Socket createSocket() throws IOException {
    return prompt(sockets.createSocket());
  }

  @Override
  public Socket createSocket(String host, int port) throws IOException {
    return prompt(sockets.createSocket(host, port));
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress own, int ownPort)
      throws IOException {
    return prompt(sockets.createSocket(host, port, own, ownPort));
  }

  @Override
  public Socket createSocket(InetAddress host, int port) throws IOException {
    return prompt(sockets.createSocket(host, port));
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress own, int ownPort)
      throws IOException {
    return prompt(sockets.createSocket(host, port, own, ownPort));
  }
}
