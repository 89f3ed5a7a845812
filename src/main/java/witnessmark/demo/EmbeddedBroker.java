package witnessmark.demo;

import io.moquette.BrokerConstants;
import io.moquette.broker.Server;
import io.moquette.broker.config.IConfig;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Properties;

/** An MQTT broker in this process, on the loopback interface only. For the demo, not for a shop. */
final class EmbeddedBroker implements AutoCloseable {
  private static final String LOOPBACK = "127.0.0.1";

  private final Server server = new Server();
  private final int port;

  private EmbeddedBroker(int port) {
    this.port = port;
  }

  static EmbeddedBroker start(Path directory) throws IOException {
    EmbeddedBroker broker = new EmbeddedBroker(freePort());
    Properties settings = new Properties();
    settings.setProperty(IConfig.HOST_PROPERTY_NAME, LOOPBACK);
    settings.setProperty(IConfig.PORT_PROPERTY_NAME, Integer.toString(broker.port));
    settings.setProperty(IConfig.WEB_SOCKET_PORT_PROPERTY_NAME, BrokerConstants.DISABLED_PORT_BIND);
    settings.setProperty(IConfig.ALLOW_ANONYMOUS_PROPERTY_NAME, "true");
    settings.setProperty(IConfig.ENABLE_TELEMETRY_NAME, "false");
    settings.setProperty(IConfig.PERSISTENCE_ENABLED_PROPERTY_NAME, "false");
    settings.setProperty(IConfig.DATA_PATH_PROPERTY_NAME, directory.toString());
    broker.server.startServer(new MemoryConfig(settings));
    return broker;
  }

  String url() {
    return "tcp://" + LOOPBACK + ":" + port;
  }

  private static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getByName(LOOPBACK))) {
      return socket.getLocalPort();
    }
  }

  @Override
  public void close() {
    server.stopServer();
  }
}
