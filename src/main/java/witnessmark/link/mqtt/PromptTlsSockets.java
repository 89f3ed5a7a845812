package witnessmark.link.mqtt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import javax.net.ssl.SSLSocketFactory;

/** Makes encrypted sockets that send at once, like {@link PromptSockets}. */
final class PromptTlsSockets extends SSLSocketFactory {
  private final SSLSocketFactory sockets;

  PromptTlsSockets(SSLSocketFactory sockets) {
    this.sockets = sockets;
  }

  @Override
  public String[] getDefaultCipherSuites() {
    return sockets.getDefaultCipherSuites();
  }

  @Override
  public String[] getSupportedCipherSuites() {
    return sockets.getSupportedCipherSuites();
  }

  @Override
  public Socket createSocket() throws IOException {
    return PromptSockets.prompt(sockets.createSocket());
  }

  @Override
  public Socket createSocket(Socket over, String host, int port, boolean closes)
      throws IOException {
    return PromptSockets.prompt(sockets.createSocket(over, host, port, closes));
  }

  @Override
  public Socket createSocket(String host, int port) throws IOException {
    return PromptSockets.prompt(sockets.createSocket(host, port));
  }

  @Override
  public Socket createSocket(String host, int port, InetAddress own, int ownPort)
      throws IOException {
    return PromptSockets.prompt(sockets.createSocket(host, port, own, ownPort));
  }

  @Override
  public Socket createSocket(InetAddress host, int port) throws IOException {
    return PromptSockets.prompt(sockets.createSocket(host, port));
  }

  @Override
  public Socket createSocket(InetAddress host, int port, InetAddress own, int ownPort)
      throws IOException {
    return PromptSockets.prompt(sockets.createSocket(host, port, own, ownPort));
  }
}
