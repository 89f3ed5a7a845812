package witnessmark.link.mqtt;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import javax.net.SocketFactory;
import org.eclipse.paho.client.mqttv3.IMqttDeliveryToken;
import org.eclipse.paho.client.mqttv3.IMqttToken;
import org.eclipse.paho.client.mqttv3.MqttAsyncClient;
import org.eclipse.paho.client.mqttv3.MqttCallback;
import org.eclipse.paho.client.mqttv3.MqttConnectOptions;
import org.eclipse.paho.client.mqttv3.MqttException;
import org.eclipse.paho.client.mqttv3.MqttMessage;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import witnessmark.link.Cut;
import witnessmark.link.Delivery;
import witnessmark.link.Inbox;
import witnessmark.link.Post;

/** One connection to the broker, from its opening to its end; never opened twice. */
final class Session implements MqttCallback {
  private static final Logger logger = LoggerFactory.getLogger(Session.class);
  private static final Duration ANSWER_LIMIT = Duration.ofSeconds(15);
  private static final Duration GOODBYE_LIMIT = Duration.ofSeconds(1);
  private static final Duration PUBLISH_LIMIT = Duration.ofSeconds(5);

  /** Publishes under way; those given up still count at the library, which allows twice as many. */
  private static final int WINDOW = 32;

  private final MqttSettings settings;
  private final Inbox inbox;
  private final Supplier<Instant> clock;
  private final Runnable wake;
  private final Trouble trouble;
  private final CutPackets packets = new CutPackets();
  private final MqttAsyncClient client;
  private final AckOrder acks = new AckOrder(this::sendAck);
  private final Silence silence = new Silence(PUBLISH_LIMIT);

  private volatile boolean full;
  private volatile boolean leaving;
  private volatile String lost;

  /**
   * @param wake run when the session is over, from the library's threads; must not block
   */
  Session(MqttSettings settings, Inbox inbox, Supplier<Instant> clock, Runnable wake)
      throws BrokerException {
    this.settings = settings;
    this.inbox = inbox;
    this.clock = clock;
    this.wake = wake;
    this.trouble = new Trouble(settings);
    try {
      client = new CuttingClient(settings.url(), settings.clientId(), packets);
    } catch (MqttException e) {
      throw new BrokerException(trouble.connecting(e), e);
    }
    client.setManualAcks(true);
    client.setCallback(this);
  }

  /** Connects and subscribes; returns early without either when given up. */
  void open(BooleanSupplier givenUp) throws BrokerException {
    try {
      Answer connected = new Answer();
      client.connect(options(), null, connected);
      if (connected.await(ANSWER_LIMIT, givenUp) != null) {
        subscribe(() -> givenUp.getAsBoolean() || lost != null);
      }
    } catch (MqttException | IllegalArgumentException e) {
      throw new BrokerException(
          e instanceof MqttException ? trouble.connecting(e) : e.getMessage(), e);
    }
  }

  /**
   * Always, even when the broker knows the session: one that lost its store would leave this link
   * connected and deaf.
   */
  private void subscribe(BooleanSupplier givenUp) throws MqttException, BrokerException {
    if (!settings.ended().isEmpty()) {
      Answer ended = new Answer();
      client.unsubscribe(settings.ended().toArray(String[]::new), null, ended);
      ended.await(ANSWER_LIMIT, givenUp);
    }
    if (!settings.subscriptions().isEmpty()) {
      Answer subscribed = new Answer();
      client.subscribe(
          settings.subscriptions().toArray(String[]::new),
          qos(1, settings.subscriptions()),
          null,
          subscribed);
      IMqttToken granted = subscribed.await(ANSWER_LIMIT, givenUp);
      if (granted != null) {
        Optional<String> fault = Granted.fault(settings.subscriptions(), granted.getGrantedQos());
        if (fault.isPresent()) {
          throw new BrokerException(settings.url() + ": " + fault.get(), null);
        }
      }
    }
    if (!settings.watched().isEmpty()) {
      client.subscribe(
          settings.watched().toArray(String[]::new),
          qos(0, settings.watched()),
          null,
          new Answer()); // whatever it is
    }
  }

  private static int[] qos(int qos, List<String> filters) {
    int[] all = new int[filters.size()];
    Arrays.fill(all, qos);
    return all;
  }

  /** Whether the connection is of no more use. */
  boolean over() {
    return full || lost != null;
  }

  /** Whether it is over because the inbox had no room. */
  boolean full() {
    return full;
  }

  /** Why the connection broke, if it did. */
  Optional<String> lost() {
    return Optional.ofNullable(lost);
  }

  boolean publish(String topic, byte[] payload, boolean retained) {
    try {
      Answer taken = new Answer();
      client.publish(topic, payload, 1, retained, null, taken);
      return answered(taken);
    } catch (MqttException e) {
      return false;
    }
  }

  /** Waits for the answer; a broker that gives none for long is gone, whatever the socket says. */
  private boolean answered(Answer answer) throws MqttException {
    boolean taken = answer.within(PUBLISH_LIMIT, () -> lost != null);
    if (silence.tooLong(taken, System.nanoTime()) && lost == null) {
      lost = settings.url() + ": the broker has answered nothing for a while";
      wake.run();
    }
    return taken;
  }

  /** Publishes in order; returns how many, from the first on, the broker has taken. */
  int publish(List<Post> posts) {
    Deque<Answer> underWay = new ArrayDeque<>();
    int taken = 0;
    try {
      for (Post post : posts) {
        if (underWay.size() == WINDOW) {
          if (!answered(underWay.remove())) {
            return taken;
          }
          taken++;
        }
        Answer answer = new Answer();
        client.publish(post.topic(), post.payload(), 1, false, null, answer);
        underWay.add(answer);
      }
      while (!underWay.isEmpty() && answered(underWay.remove())) {
        taken++;
      }
    } catch (MqttException e) {
      logger.atDebug().addKeyValue("link", settings.name()).setCause(e).log("not published");
    }
    return taken;
  }

  /**
   * Ends the connection with a goodbye, so that the broker does not publish the last will.
   *
   * @param grace how long to wait for messages already taken to be acknowledged: what is not
   *     acknowledged by then comes again
   */
  void leave(Duration grace) {
    leaving = true;
    long deadline = System.nanoTime() + grace.toNanos();
    while (acks.open() > 0 && lost == null && System.nanoTime() < deadline) {
      LockSupport.parkNanos(5_000_000);
    }
    acks.end();
    try {
      sayGoodbye();
    } catch (MqttException e) {
      // It is of no more use either way; the next attempt takes a new client.
      logger.atDebug().addKeyValue("link", settings.name()).setCause(e).log("goodbye failed");
    }
  }

  private void sayGoodbye() throws MqttException {
    try {
      if (client.isConnected()) {
        Answer gone = new Answer();
        client.disconnect(0, null, gone);
        gone.await(GOODBYE_LIMIT, () -> false);
      }
    } finally {
      // Also ends an attempt to connect that is still under way. The client is left to the garbage
      // collector: its close() takes away what its receiving thread may still use.
      client.disconnectForcibly(0, 1, false);
    }
  }

  @Override
  public void messageArrived(String topic, MqttMessage message) {
    // After one refusal all that follow are refused too: the broker sends them again in order.
    // It does not send again what it delivered at most once.
    if (message.getQos() > 0 && (full || leaving || lost != null)) {
      return;
    }
    try {
      if (!take(topic, message)) {
        full = true;
        wake.run();
      }
    } catch (RuntimeException e) {
      // The library drops the connection silently when this method throws.
      logger.atError().addKeyValue("link", settings.name()).setCause(e).log("inbox failed");
      lost = settings.url() + ": left, because the bridge failed to take a message: " + e;
      wake.run();
    }
  }

  @Override
  public void connectionLost(Throwable cause) {
    logger.atDebug().addKeyValue("link", settings.name()).setCause(cause).log("connection lost");
    if (lost == null) {
      lost = trouble.lost();
    }
    wake.run();
  }

  @Override
  public void deliveryComplete(IMqttDeliveryToken token) {
    // publish waits on the token itself
  }

  private boolean take(String topic, MqttMessage message) {
    boolean owes = message.getQos() > 0;
    Optional<Cut> cut = packets.of(message.getPayload());
    boolean taken =
        inbox.offer(
            new Delivery(
                settings.name(),
                topic,
                cut.map(Cut::head).orElseGet(message::getPayload),
                clock.get(),
                owes,
                // A retained message comes again at every subscription.
                message.isDuplicate() || message.isRetained(),
                cut,
                owes ? acks.owe(message.getId()) : () -> {}));
    if (!taken && owes) {
      acks.disown();
    }
    return taken;
  }

  private void sendAck(int id) {
    try {
      client.messageArrivedComplete(id, 1);
    } catch (MqttException e) {
      // The broker will send the message again.
      logger.atDebug().addKeyValue("link", settings.name()).setCause(e).log("not acknowledged");
    }
  }

  private MqttConnectOptions options() {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setCleanSession(false);
    options.setAutomaticReconnect(false);
    options.setKeepAliveInterval(15);
    options.setConnectionTimeout(10);
    options.setMaxInflight(2 * WINDOW);
    options.setWill(settings.willTopic(), settings.will(), 1, true);
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
}
