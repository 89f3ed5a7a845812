package witnessmark.doctor;

import java.io.IOException;
import java.io.InputStream;
import java.net.HttpURLConnection;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URL;
import java.util.Optional;
import witnessmark.config.HttpConfig;

/** Health and figures over HTTP, where they are to be served. */
final class Served {
  static final String AREA = "http";
  private static final int LONGEST = 64 << 10;
  private static final int PATIENCE_MILLIS = 3_000;

  private final HttpConfig http;
  private Optional<Health> health = Optional.empty();

  Served(HttpConfig http) {
    this.http = http;
  }

  /** What the daemon says of itself there, once it was looked at. */
  Optional<Health> health() {
    return health;
  }

  /**
   * What is found at the address.
   *
   * @param running whether a daemon is at work, which is to answer there
   */
  Finding look(boolean running) {
    String host = http.host().contains(":") ? "[" + http.host() + "]" : http.host();
    String url = "http://" + host + ":" + http.port() + "/health";
    String who = "See who has the port: ss -ltnp 'sport = :" + http.port() + "'";
    if (!running) {
      return taken(http)
          ? Finding.bad(AREA, "Another program answers at " + host + ":" + http.port() + ".", who)
          : Finding.good(AREA, "The address is free for the daemon.");
    }
    try {
      int status = ask(url);
      return status == HttpURLConnection.HTTP_OK
          ? Finding.good(AREA, url + " answers " + status + ".")
          : Finding.bad(
              AREA, url + " answers " + status + ".", "Read what it says: curl -s " + url);
    } catch (IOException e) {
      return Finding.bad(AREA, url + " does not answer (" + e.getMessage() + ").", who);
    }
  }

  /** The status of the answer; what it says is kept where it is a bridge's health. */
  private int ask(String url) throws IOException {
    HttpURLConnection call = (HttpURLConnection) new URL(url).openConnection();
    call.setConnectTimeout(PATIENCE_MILLIS);
    call.setReadTimeout(PATIENCE_MILLIS);
    try {
      int status = call.getResponseCode();
      try (InputStream body = status < 400 ? call.getInputStream() : call.getErrorStream()) {
        health =
            Optional.ofNullable(body == null ? null : Health.read(body.readNBytes(LONGEST)))
                .filter(Health::alive);
      }
      return status;
    } finally {
      call.disconnect();
    }
  }

  private static boolean taken(HttpConfig http) {
    try (Socket socket = new Socket()) {
      socket.connect(new InetSocketAddress(http.host(), http.port()), PATIENCE_MILLIS);
      return true;
    } catch (IOException e) {
      return false;
    }
  }
}
