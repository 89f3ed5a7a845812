package witnessmark.link.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.internal.NetworkModule;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** The library's client, reading through {@link CutPackets}. */
final class CuttingClient extends MqttAsyncClient {
  private final CutPackets packets;

  CuttingClient(String url, String clientId, CutPackets packets) throws MqttException {
    super(url, clientId, new MemoryPersistence());
    this.packets = packets;
  }

  @Override
  protected NetworkModule[] createNetworkModules(String address, MqttConnectOptions options)
      throws MqttException {
    NetworkModule[] modules = super.createNetworkModules(address, options);
    for (int i = 0; i < modules.length; i++) {
      modules[i] = new Cutting(modules[i]);
    }
    return modules;
  }

  private final class Cutting implements NetworkModule {
    private final NetworkModule module;
    private InputStream in;

    Cutting(NetworkModule module) {
      this.module = module;
    }

    @Override
    public void start() throws IOException, MqttException {
      module.start();
      in = packets.of(module.getInputStream());
    }

    @Override
    public InputStream getInputStream() {
      return in;
    }

    @Override
    public OutputStream getOutputStream() throws IOException {
      return module.getOutputStream();
    }

    @Override
    public void stop() throws IOException {
      module.stop();
    }

    @Override
    public String getServerURI() {
      return module.getServerURI();
    }
  }
}
