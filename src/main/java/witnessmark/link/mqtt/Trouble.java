package witnessmark.link.mqtt;

import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertPathBuilderException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import java.util.Locale;
import java.util.Optional;
import javax.net.ssl.SSLException;
import org.eclipse.paho.client.mqttv3.MqttException;

/** Tells in plain words what a failed connection to the broker means and what to do. */
final class Trouble {
  private final MqttSettings settings;

  Trouble(MqttSettings settings) {
    this.settings = settings;
  }

  /** Why no connection came about. */
  String connecting(Throwable failure) {
    return settings.url() + ": " + why(failure);
  }

  /** The same without the url. */
  String why(Throwable failure) {
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      Optional<String> known = network(cause);
      if (known.isPresent()) {
        return known.get();
      }
    }
    // Certificates are judged from the innermost cause: the outer ones only say "handshake".
    return certificate(failure).orElseGet(() -> answer(failure));
  }

  /** Such words as a sentence of their own. */
  static String sentence(String words) {
    String text = words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    return text.endsWith(".") ? text : text + ".";
  }

  /** Why an established connection is gone. */
  String lost() {
    return settings.url()
        + ": the connection was lost; if this repeats, look for another program that uses the"
        + " client-id \""
        + settings.clientId()
        + "\"";
  }

  private Optional<String> network(Throwable cause) {
    if (cause instanceof UnknownHostException) {
      return Optional.of(
          "no computer of the name \"" + settings.host() + "\" is known; check the url");
    }
    if (cause instanceof ConnectException || cause instanceof NoRouteToHostException) {
      return Optional.of("nothing answers there; check that the broker runs, and the url");
    }
    if (cause instanceof SocketTimeoutException) {
      return Optional.of("no answer in time; check the network, a firewall, and the url");
    }
    return Optional.empty();
  }

  private Optional<String> certificate(Throwable failure) {
    String signers = settings.caFile().map(Object::toString).orElse("the Java runtime's own list");
    Optional<String> found = Optional.empty();
    for (Throwable cause = failure; cause != null; cause = cause.getCause()) {
      String text = String.valueOf(cause.getMessage());
      if (cause instanceof CertificateExpiredException
          || cause instanceof CertificateNotYetValidException) {
        return Optional.of(
            "the broker's certificate is not valid today; renew it, or set this computer's clock");
      }
      if (cause instanceof CertPathBuilderException || text.contains("validation failed")) {
        found =
            Optional.of(
                "the broker's certificate is signed by nobody in "
                    + signers
                    + "; check the CA file, and that this is your broker");
      } else if (cause instanceof CertificateException && text.startsWith("No ")) {
        found =
            Optional.of(
                "the broker's certificate is not for the name \""
                    + settings.host()
                    + "\"; use the name it was made for in the url");
      } else if (cause instanceof SSLException && text.contains("fatal alert")) {
        found = Optional.of(alert());
      }
    }
    return found;
  }

  private String alert() {
    return settings
        .certFile()
        .map(file -> "the broker refused the client certificate " + file)
        .orElse("the broker asks for a client certificate; give this link one with its key");
  }

  private String answer(Throwable failure) {
    int code = failure instanceof MqttException mqtt ? mqtt.getReasonCode() : -1;
    if (code == MqttException.REASON_CODE_FAILED_AUTHENTICATION
        || code == MqttException.REASON_CODE_NOT_AUTHORIZED) {
      return settings
          .user()
          .map(user -> "the broker refused user \"" + user + "\"; check user and password")
          .orElse("the broker refused a link without user and password; give it both");
    }
    if (code == MqttException.REASON_CODE_INVALID_CLIENT_ID) {
      return "the broker refused the client-id \"" + settings.clientId() + "\"";
    }
    if (code == MqttException.REASON_CODE_BROKER_UNAVAILABLE) {
      return "the broker says it is not ready for connections";
    }
    if (code == MqttException.REASON_CODE_CLIENT_TIMEOUT) {
      return "the broker took the connection but does not answer; restart it, or check the port";
    }
    if (code == MqttException.REASON_CODE_CONNECTION_LOST
        || failure.getCause() instanceof SocketException) {
      return ended();
    }
    return "the connection failed: " + failure;
  }

  /** TLS 1.3 may lose the broker's alert and leave only an ended connection. */
  private String ended() {
    if (!settings.tls()) {
      return "the broker ended the connection; check the port, and whether it needs ssl://";
    }
    return settings.certFile().isPresent()
        ? "the broker ended the connection; check that this port encrypts, and the client"
            + " certificate"
        : "the broker ended the connection; check that this port encrypts, and if it asks for a"
            + " client certificate, give this link one with its key";
  }
}
