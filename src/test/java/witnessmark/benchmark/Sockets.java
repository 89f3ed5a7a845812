package witnessmark.benchmark;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import javax.net.SocketFactory;

/** Sockets that send at once, so that no figure holds the 40 ms of a delayed confirmation. */
public final class Sockets extends SocketFactory {
  @Override
  public Socket createSocket() throws IOException {
    Socket socket = new Socket();
    socket.setTcpNoDelay(true);
    return socket;
  }

  @Override
  public Socket createSocket(String host, int port) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress own, int ownPort) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Socket createSocket(InetAddress host, int port) {
    throw new UnsupportedOperationException();
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress own, int ownPort) {
    throw new UnsupportedOperationException();
  }
}
