package wrenchsim.mqtt;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import java.util.function.Consumer;
import org.eclipse.paho.client.mqttv3.IMqttActionListener;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.eclipse.paho.client.mqttv3.persist.MemoryPersistence;
import wrenchsim.wire.LinkException;

/**
 * A connection that outlives its connections: what the broker has not acknowledged is kept and sent
 * again, in order, after every reconnection. QoS 1 throughout.
 */
public final class BrokerLink implements AutoCloseable {
  private static final int MOST_UNACKNOWLEDGED = 500;
  private static final long RETRY_MILLIS = 500;
  private static final long CONNECT_MILLIS = 5_000;

  private final BrokerAddress address;
  private final Duration patience;
  private final Map<String, Consumer<byte[]>> topics = new LinkedHashMap<>();
  private final TreeMap<Long, Outgoing> unacknowledged = new TreeMap<>();
  private final Thread keeper = new Thread(this::keepConnected, "broker-link");
  private MqttAsyncClient client;
  private boolean connected;
  private boolean closed;
  private long lostAtNanos;
  private long published;
  private int reconnections;
  private String lastFailure = "the connection was lost";

  private record Outgoing(String topic, byte[] payload) {}

  /**
   * A link that is not open yet.
   *
   * @param patience how long the broker may be away before sending fails
   */
  public BrokerLink(BrokerAddress address, Duration patience) {
    this.address = address;
    this.patience = patience;
    keeper.setDaemon(true);
  }

  /** Hears a topic from {@link #open} on; {@code heard} must return at once and not throw. */
  public void listen(String topic, Consumer<byte[]> heard) {
    topics.put(topic, heard);
  }

  /**
   * Connects for the first time.
   *
   * @throws LinkException when nothing answers or the broker refuses us: no retry, for it is most
   *     likely a wrong address
   */
  public void open() throws LinkException {
    try {
      connect();
    } catch (MqttException e) {
      throw new LinkException(
          "no MQTT broker took us at %s: %s. Start the broker, or name another with --broker tcp://HOST:PORT."
              .formatted(address, reason(e)));
    }
    keeper.start();
  }

  /**
   * Publishes, now or after the next reconnection; waits while too many are unacknowledged.
   *
   * @throws LinkException when the broker has been away for too long
   */
  public synchronized void publish(String topic, byte[] payload) throws LinkException {
    awaitAtMost(MOST_UNACKNOWLEDGED - 1);
    long number = published++;
    unacknowledged.put(number, new Outgoing(topic, payload.clone()));
    if (connected) {
      hand(number);
    }
  }

  /**
   * Waits until the broker has acknowledged everything.
   *
   * @throws LinkException when the broker has been away for too long
   */
  public synchronized void awaitAcknowledged() throws LinkException {
    awaitAtMost(0);
  }

  /** How often the connection had to be made anew. */
  public synchronized int reconnections() {
    return reconnections;
  }

  private void awaitAtMost(int open) throws LinkException {
    while (unacknowledged.size() > open) {
      if (!connected && System.nanoTime() - lostAtNanos > patience.toNanos()) {
        throw new LinkException(
            "the MQTT broker at %s has been away for %d s: %s. %d messages are unacknowledged; start the broker and run again."
                .formatted(address, patience.toSeconds(), lastFailure, unacknowledged.size()));
      }
      pause(RETRY_MILLIS);
    }
  }

  private void keepConnected() {
    while (awaitLoss()) {
      try {
        connect();
      } catch (MqttException e) {
        synchronized (this) {
          lastFailure = reason(e);
          pause(RETRY_MILLIS);
        }
      }
    }
  }

  private synchronized boolean awaitLoss() {
    while (connected && !closed) {
      pause(RETRY_MILLIS);
    }
    return !closed;
  }

  private void pause(long millis) {
    try {
      wait(millis);
    } catch (InterruptedException e) {
      closed = true;
      Thread.currentThread().interrupt();
      throw new IllegalStateException("interrupted while waiting for the broker", e);
    }
  }

  /** A new client for every attempt: an old one may be stuck in its own reconnecting. */
  private void connect() throws MqttException {
    MqttAsyncClient fresh =
        new MqttAsyncClient(
            address.uri(), "wrenchsim-" + UUID.randomUUID(), new MemoryPersistence());
    try {
      fresh.setCallback(new Ears(fresh));
      fresh.connect(options()).waitForCompletion(CONNECT_MILLIS);
      for (String topic : topics.keySet()) {
        fresh.subscribe(topic, 1).waitForCompletion(CONNECT_MILLIS);
      }
    } catch (MqttException e) {
      discard(fresh);
      throw e;
    }
    adopt(fresh);
  }

  private synchronized void adopt(MqttAsyncClient fresh) {
    if (client != null) {
      discard(client);
      reconnections++;
    }
    client = fresh;
    connected = fresh.isConnected();
    for (Long number : unacknowledged.keySet().toArray(Long[]::new)) {
      if (connected && unacknowledged.containsKey(number)) {
        hand(number);
      }
    }
    notifyAll();
  }

  private void hand(long number) {
    Outgoing outgoing = unacknowledged.get(number);
    try {
      client.publish(
          outgoing.topic(), outgoing.payload(), 1, false, null, new Acknowledged(number));
    } catch (MqttException e) {
      lost(client, reason(e));
    }
  }

  private synchronized void lost(MqttAsyncClient which, String why) {
    if (which == client && connected) {
      connected = false;
      lastFailure = why;
      lostAtNanos = System.nanoTime();
      notifyAll();
    }
  }

  private MqttConnectOptions options() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setCleanSession(true);
    options.setAutomaticReconnect(false);
    options.setKeepAliveInterval(15);
    options.setMaxInflight(2 * MOST_UNACKNOWLEDGED);
    address.user().ifPresent(options::setUserName);
    address.password().ifPresent(p -> options.setPassword(p.toCharArray()));
    return options;
  }

  private static String reason(MqttException e) {
    Throwable cause = e.getCause() == null ? e : e.getCause();
    return cause.getMessage() == null ? cause.toString() : cause.getMessage();
  }

  private static void discard(MqttAsyncClient client) {
    try {
      client.disconnectForcibly(0, 200, false);
    } catch (MqttException e) {
      // It was not connected; closing is all that is left to do.
    }
    try {
      client.close(true);
    } catch (MqttException e) {
      // A client that cannot be closed holds nothing we still need.
    }
  }

  @Override
  public void close() {
    MqttAsyncClient last;
    synchronized (this) {
      closed = true;
      connected = false;
      last = client;
      client = null;
      notifyAll();
    }
    if (last != null) {
      discard(last);
    }
  }

  private final class Acknowledged implements IMqttActionListener {
    private final long number;

    Acknowledged(long number) {
      this.number = number;
    }

    @Override
    public void onSuccess(IMqttToken token) {
      synchronized (BrokerLink.this) {
        unacknowledged.remove(number);
        BrokerLink.this.notifyAll();
      }
    }

    @Override
    public void onFailure(IMqttToken token, Throwable why) {
      // The message stays unacknowledged and goes out again after the reconnection.
    }
  }

  private final class Ears implements MqttCallback {
    private final MqttAsyncClient owner;

    Ears(MqttAsyncClient owner) {
      this.owner = owner;
    }

    @Override
    public void connectionLost(Throwable cause) {
      lost(owner, cause == null ? "the connection was lost" : String.valueOf(cause.getMessage()));
    }

    @Override
    public void messageArrived(String topic, MqttMessage message) {
      Consumer<byte[]> heard = topics.get(topic);
      if (heard != null) {
        heard.accept(message.getPayload());
      }
    }

    @Override
    public void deliveryComplete(IMqttDeliveryToken token) {}
  }
}
