package witnessmark.link.mqtt;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.UnknownHostException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * Tries a broker step by step, beside a link that may be at work: under a client-id of its own,
 * with a session that ends with it, without a last will, publishing nothing.
 */
public final class BrokerTrial {
  static final Duration PATIENCE = Duration.ofSeconds(5);

  private final MqttSettings settings;
  private final List<Tried> steps = new ArrayList<>();
  private final Map<String, byte[]> health = new ConcurrentHashMap<>();

  private BrokerTrial(MqttSettings settings) {
    this.settings = settings;
  }

  /**
   * What was found.
   *
   * @param steps up to the first that failed
   * @param health what the broker retains of bridges' health that we may read, by topic
   */
  public record Result(List<Tried> steps, Map<String, byte[]> health) {
    public Result {
      steps = List.copyOf(steps);
      health = Map.copyOf(health);
    }
  }

  /** Tries the broker; each step takes some seconds at most. */
  public static Result of(MqttSettings settings, Instant now) {
    BrokerTrial trial = new BrokerTrial(settings);
    trial.run(now);
    return new Result(trial.steps, trial.health);
  }

  private void run(Instant now) {
    Optional<InetSocketAddress> address = address();
    if (address.isEmpty() || !reached(address.get())) {
      return;
    }
    if (settings.tls()) {
      Certificates certificates = new Certificates(settings, address.get(), PATIENCE);
      certificates.own(now).ifPresent(steps::add);
      steps.add(certificates.theirs(now));
    }
    if (steps.stream().noneMatch(s -> s.outcome() == Tried.Outcome.FAILED)) {
      new SessionTrial(settings, steps::add, health).run();
    }
  }

  private Optional<InetSocketAddress> address() {
    try {
      InetAddress first = InetAddress.getByName(settings.host());
      if (!first.getHostAddress().equals(settings.host())) {
        steps.add(Tried.good(settings.host() + " is " + first.getHostAddress() + "."));
      }
      return Optional.of(new InetSocketAddress(first, URI.create(settings.url()).getPort()));
    } catch (UnknownHostException e) {
      steps.add(
          Tried.failed(
              "No computer of the name \"" + settings.host() + "\" is known.",
              "Correct url, or ask the name server: getent hosts " + settings.host()));
      return Optional.empty();
    }
  }

  private boolean reached(InetSocketAddress address) {
    try (Socket socket = new Socket()) {
      socket.connect(address, (int) PATIENCE.toMillis());
      steps.add(Tried.good("Something answers at " + settings.url() + "."));
      return true;
    } catch (IOException e) {
      steps.add(
          Tried.failed(
              "Nothing answers at " + settings.url() + " (" + e.getMessage() + ").",
              address.getAddress().isLoopbackAddress()
                  ? "Start the broker, e.g. systemctl start mosquitto. If it runs, compare url with"
                      + " where it listens: ss -ltn"
                  : "See on that computer whether the broker runs (systemctl status mosquitto) and a"
                      + " firewall lets port "
                      + address.getPort()
                      + " through, and whether url is right."));
      return false;
    }
  }
}
