package witnessmark.link.mqtt;

import java.net.URI;
import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.paho.client.mqttv3.MqttTopic;
import witnessmark.torque.Label;

/**
 * Which broker a link talks to, as whom, and about what.
 *
 * @param name the link's name in the configuration
 * @param url {@code tcp://host:port} or {@code ssl://host:port}
 * @param clientId the name the broker keeps this link's messages under; no two programs may use one
 * @param password never shown and never logged
 * @param caFile PEM certificates of those who may sign the broker's certificate; without it those
 *     the Java runtime trusts
 * @param certFile PEM certificate (and chain) this link shows to the broker
 * @param keyFile PEM PKCS #8 private key of that certificate, not encrypted
 * @param subscriptions topic filters; may be empty for a link that only publishes
 * @param watched topic filters of what is good to hear but not worth keeping: read with QoS 0, so
 *     that nothing of it queues up while this link is away, and no fault where the broker refuses
 * @param ended topic filters that an earlier configuration may have left with the broker
 * @param willTopic where the broker publishes {@code will}, retained, when this link is cut off
 */
public record MqttSettings(
    String name,
    String url,
    String clientId,
    Optional<String> user,
    Optional<String> password,
    Optional<Path> caFile,
    Optional<Path> certFile,
    Optional<Path> keyFile,
    List<String> subscriptions,
    List<String> watched,
    List<String> ended,
    String willTopic,
    byte[] will) {

  /**
   * @throws IllegalArgumentException when a setting cannot work; the message says which and why
   */
  public MqttSettings {
    Label.check("link name", name);
    Label.check("client-id", clientId);
    boolean tls = checkUrl(url).getScheme().equals("ssl");
    if (password.isPresent() && user.isEmpty()) {
      throw new IllegalArgumentException("a password needs a user");
    }
    if (certFile.isPresent() != keyFile.isPresent()) {
      throw new IllegalArgumentException(
          "a client certificate and its key belong together: give both files or neither");
    }
    if (!tls && (caFile.isPresent() || certFile.isPresent())) {
      throw new IllegalArgumentException(
          "certificate files need a url that begins with ssl://, found \"" + url + "\"");
    }
    subscriptions = List.copyOf(subscriptions);
    watched = List.copyOf(watched);
    ended = List.copyOf(ended);
    subscriptions.forEach(filter -> checkTopic("subscription", filter, true));
    checkTopic("will topic", willTopic, false);
    will = will.clone();
  }

  @Override
  public byte[] will() {
    return will.clone();
  }

  /** Everything but the password. */
  @Override
  public String toString() {
    return "MqttSettings[name=" + name + ", url=" + url + ", clientId=" + clientId + "]";
  }

  String host() {
    return URI.create(url).getHost();
  }

  boolean tls() {
    return url.startsWith("ssl://");
  }

  /**
   * The url, unchanged.
   *
   * @throws IllegalArgumentException when it is not of its form
   */
  public static String checkedUrl(String url) {
    checkUrl(url);
    return url;
  }

  /**
   * The one topic, unchanged.
   *
   * @throws IllegalArgumentException when it is none, or several by a wildcard
   */
  public static String checkedTopic(String topic) {
    if (topic.contains("+") || topic.contains("#")) {
      throw new IllegalArgumentException("\"" + topic + "\" has a wildcard");
    }
    checkTopic("topic", topic, false);
    return topic;
  }

  private static URI checkUrl(String url) {
    try {
      URI uri = new URI(Objects.requireNonNull(url, "url"));
      boolean scheme = "tcp".equals(uri.getScheme()) || "ssl".equals(uri.getScheme());
      boolean bare = uri.getUserInfo() == null && uri.getQuery() == null;
      boolean noPath = uri.getPath() == null || uri.getPath().isEmpty();
      boolean nothingMore = bare && noPath && uri.getFragment() == null;
      if (scheme && nothingMore && uri.getHost() != null && uri.getPort() >= 0) {
        return withPort(uri);
      }
    } catch (URISyntaxException notOne) {
      // told below, without the text: it could hold a password
    }
    throw new IllegalArgumentException(
        "a broker's url must be tcp://HOST:PORT or ssl://HOST:PORT and nothing more");
  }

  private static URI withPort(URI uri) {
    if (uri.getPort() < 1 || uri.getPort() > 65_535) {
      throw new IllegalArgumentException(
          "port " + uri.getPort() + " of the url is not from 1 to 65535");
    }
    return uri;
  }

  private static void checkTopic(String what, String topic, boolean wildcards) {
    try {
      MqttTopic.validate(topic, wildcards);
    } catch (IllegalArgumentException e) {
      throw new IllegalArgumentException(
          what + " \"" + topic + "\" is no MQTT topic" + (wildcards ? " filter" : ""), e);
    }
  }
}
