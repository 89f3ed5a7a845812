package witnessmark.link.mqtt;

import java.security.SecureRandom;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.net.SocketFactory;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;

/** Whether a broker lets us in and lets us read, tried in a session that leaves nothing behind. */
final class SessionTrial {
  /** What is retained comes right after the broker's answer. */
  private static final Duration RETAINED = Duration.ofMillis(400);

  private final MqttSettings settings;
  private final Consumer<Tried> steps;
  private final Map<String, byte[]> health;

  SessionTrial(MqttSettings settings, Consumer<Tried> steps, Map<String, byte[]> health) {
    this.settings = settings;
    this.steps = steps;
    this.health = health;
  }

  void run() {
    byte[] bytes = new byte[4];
    new SecureRandom().nextBytes(bytes);
    String id = "witnessmark-doctor-" + HexFormat.of().formatHex(bytes);
    MqttAsyncClient client;
    try {
      client = new MqttAsyncClient(settings.url(), id, new MemoryPersistence());
    } catch (MqttException | IllegalArgumentException e) {
      steps.accept(refused(e));
      return;
    }
    try {
      Answer connected = new Answer();
      client.connect(options(), null, connected);
      connected.await(BrokerTrial.PATIENCE, () -> false);
      String who = settings.user().map(u -> " as \"" + u + "\"").orElse(" without a user");
      steps.accept(Tried.good("It lets us in" + who + "."));
      subscribe(client);
    } catch (MqttException | IllegalArgumentException e) {
      steps.accept(refused(e));
    } finally {
      leave(client);
    }
  }

  private MqttConnectOptions options() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setCleanSession(true);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout((int) BrokerTrial.PATIENCE.toSeconds());
    settings.user().ifPresent(options::setUserName);
    settings.password().ifPresent(password -> options.setPassword(password.toCharArray()));
    if (settings.tls()) {
      options.setHttpsHostnameVerificationEnabled(true);
      options.setSocketFactory(Tls.sockets(settings));
    } else {
      options.setSocketFactory(new PromptSockets(SocketFactory.getDefault()));
    }
    return options;
  }

  private void subscribe(MqttAsyncClient client) throws MqttException {
    List<String> wanted = settings.subscriptions();
    if (!wanted.isEmpty()) {
      Optional<String> fault = Granted.fault(wanted, granted(client, wanted, 1));
      steps.accept(
          fault.isEmpty()
              ? Tried.good("We may read what wrenches and scanners send.")
              : Tried.failed(
                  Trouble.sentence(fault.get()),
                  "Allow it in the broker's access list; in mosquitto's acl_file: user "
                      + settings.user().orElse("NAME")
                      + ", and on the next line: topic readwrite witnessmark/v1/#"));
    }
    client.setCallback(new Retained(health));
    granted(client, List.of(Retained.TOPICS), 0);
    try {
      Thread.sleep(RETAINED.toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static int[] granted(MqttAsyncClient client, List<String> filters, int qos)
      throws MqttException {
    int[] wanted = new int[filters.size()];
    Arrays.fill(wanted, qos);
    Answer subscribed = new Answer();
    client.subscribe(filters.toArray(String[]::new), wanted, null, subscribed);
    IMqttToken answer = subscribed.await(BrokerTrial.PATIENCE, () -> false);
    return answer == null ? new int[0] : answer.getGrantedQos();
  }

  private Tried refused(Exception e) {
    String why = Trouble.sentence(new Trouble(settings).why(e));
    String user = settings.user().orElse("witnessmark");
    if (why.contains("refused user")) {
      return Tried.failed(
          why,
          "Correct the password in the file that password-file names (or in password-env). "
              + recipe(user));
    }
    if (why.contains("without user and password")) {
      return Tried.failed(why, "Add user and password-file to this [[mqtt]]. " + recipe(user));
    }
    return Tried.failed(why, "Read the broker's own log, e.g.: journalctl -u mosquitto -n 50");
  }

  /** Without the file mosquitto_passwd ends; its option that makes one empties what is there. */
  private static String recipe(String user) {
    return "A mosquitto broker is given a password with: mosquitto_passwd /etc/mosquitto/passwd "
        + user
        + " && systemctl reload mosquitto. Where that file is new, make it first (install -m 640 -g"
        + " mosquitto /dev/null /etc/mosquitto/passwd) and name it in mosquitto.conf:"
        + " password_file /etc/mosquitto/passwd";
  }

  private static void leave(MqttAsyncClient client) {
    try {
      if (client.isConnected()) {
        Answer gone = new Answer();
        client.disconnect(0, null, gone);
        gone.await(Duration.ofSeconds(1), () -> false);
      }
      client.disconnectForcibly(0, 1, false);
    } catch (MqttException e) {
      return; // the session ends with the connection in any case
    }
  }
}
