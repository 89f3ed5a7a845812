package witnessmark.link.mqtt;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/** A broker's certificates, and our own: whether they are accepted, and until when. */
final class Certificates {
  private static final Duration SOON = Duration.ofDays(30);

  private final MqttSettings settings;
  private final InetSocketAddress address;
  private final int patience;

  Certificates(MqttSettings settings, InetSocketAddress address, Duration patience) {
    this.settings = settings;
    this.address = address;
    this.patience = (int) patience.toMillis();
  }

  /** Shakes hands as the link does. */
  Tried theirs(Instant now) {
    try {
      List<X509Certificate> chain = chain(Tls.sockets(settings), true);
      return until("The broker's certificate is accepted", chain, now, look());
    } catch (IllegalArgumentException e) {
      return Tried.failed(
          Trouble.sentence(e.getMessage()),
          "Mend the files that ca-file, cert-file and key-file name.");
    } catch (IOException e) {
      return refused(Trouble.sentence(new Trouble(settings).why(e)), now);
    }
  }

  private Tried refused(String why, Instant now) {
    Optional<X509Certificate> shown = shown();
    if (shown.isEmpty()) {
      return Tried.failed(
          "What answers there does not speak TLS.",
          "Where the broker does not encrypt, write tcp:// in url; else name the port where it does,"
              + " often 8883. What it says: openssl s_client -connect "
              + settings.host()
              + ":"
              + address.getPort()
              + " < /dev/null");
    }
    X509Certificate theirs = shown.get();
    if (theirs.getNotAfter().toInstant().isBefore(now)) {
      return Tried.failed(
          "The broker's certificate has expired on " + day(theirs) + ".",
          "Have a new one signed and give it to the broker (mosquitto: certfile), then restart it."
              + " Its dates: "
              + look());
    }
    if (theirs.getNotBefore().toInstant().isAfter(now)) {
      return Tried.failed(
          "The broker's certificate is good only from "
              + theirs.getNotBefore().toInstant()
              + " on, and this computer's clock says "
              + now
              + ".",
          "Set this computer's clock: timedatectl set-ntp true");
    }
    if (why.contains("not for the name")) {
      return Tried.failed(
          "The broker's certificate is for "
              + names(theirs)
              + ", not for \""
              + settings.host()
              + "\".",
          "Write a name that it is for into url, or give the broker one for "
              + settings.host()
              + ".");
    }
    return Tried.failed(
        why + " It says it is signed by " + theirs.getIssuerX500Principal().getName() + ".",
        "Name that signer's certificate with ca-file. What the broker shows: " + look());
  }

  private String look() {
    return "openssl s_client -connect "
        + settings.host()
        + ":"
        + address.getPort()
        + " < /dev/null | openssl x509 -noout -subject -issuer -dates";
  }

  /** Until when the certificate is good that we show. */
  Optional<Tried> own(Instant now) {
    return settings.certFile().map(file -> own(file, now));
  }

  private static Tried own(Path file, Instant now) {
    try {
      return until(
          "Our own certificate is there",
          Pem.certificates(file),
          now,
          "openssl x509 -noout -subject -issuer -dates -in " + file);
    } catch (IllegalArgumentException e) {
      return Tried.failed(Trouble.sentence(e.getMessage()), "Mend the file that cert-file names.");
    }
  }

  private static Tried until(String what, List<X509Certificate> chain, Instant now, String look) {
    X509Certificate first =
        chain.stream().min(Comparator.comparing(X509Certificate::getNotAfter)).orElseThrow();
    Instant end = first.getNotAfter().toInstant();
    if (end.isBefore(now)) {
      return Tried.failed(
          what + ", but it has expired on " + day(first) + ".", "Renew it. Its dates: " + look);
    }
    long days = Duration.between(now, end).toDays();
    String found = what + "; it is good until " + day(first) + ", " + days + " days from now.";
    return end.isBefore(now.plus(SOON))
        ? new Tried(Tried.Outcome.SOON, found, "Renew it before then. Its dates: " + look)
        : Tried.good(found);
  }

  private static LocalDate day(X509Certificate certificate) {
    return certificate.getNotAfter().toInstant().atZone(ZoneOffset.UTC).toLocalDate();
  }

  private static String names(X509Certificate certificate) {
    try {
      if (certificate.getSubjectAlternativeNames() != null) {
        return String.join(
            ", ",
            certificate.getSubjectAlternativeNames().stream()
                .map(n -> String.valueOf(n.get(1)))
                .toList());
      }
    } catch (GeneralSecurityException e) {
      // its subject has to do
    }
    return certificate.getSubjectX500Principal().getName();
  }

  /** What the broker shows, whoever signed it: read for its dates and names, never trusted. */
  private Optional<X509Certificate> shown() {
    try {
      return chain(Tls.looking(), false).stream().findFirst();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  private List<X509Certificate> chain(SSLSocketFactory sockets, boolean named) throws IOException {
    try (Socket plain = new Socket()) {
      plain.connect(address, patience);
      plain.setSoTimeout(patience);
      try (SSLSocket socket =
          (SSLSocket) sockets.createSocket(plain, settings.host(), address.getPort(), true)) {
        SSLParameters parameters = socket.getSSLParameters();
        parameters.setEndpointIdentificationAlgorithm(named ? "HTTPS" : null);
        socket.setSSLParameters(parameters);
        socket.startHandshake();
        return Arrays.stream(socket.getSession().getPeerCertificates())
            .map(X509Certificate.class::cast)
            .toList();
      }
    }
  }
}
