package witnessmark.doctor;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URL;
import witnessmark.config.HttpConfig;

/** Health and figures over HTTP, where they are to be served. */
final class Served {
  private static final String AREA = "http";
  private static final int PATIENCE_MILLIS = 3_000;

  private Served() {}

  /**
   * What is found at the address.
   *
   * @param running whether a daemon is at work, which is to answer there
   */
  static Finding look(HttpConfig http, boolean running) {
    String host = http.host().contains(":") ? "[" + http.host() + "]" : http.host();
    String url = "http://" + host + ":" + http.port() + "/health";
    String who = "See who has the port: ss -ltnp 'sport = :" + http.port() + "'";
    if (!running) {
      return taken(http)
          ? Finding.bad(AREA, "Another program answers at " + host + ":" + http.port() + ".", who)
          : Finding.good(AREA, "The address is free for the daemon.");
    }
    try {
      int status = status(url);
      return status == HttpURLConnection.HTTP_OK
          ? Finding.good(AREA, url + " answers " + status + ".")
          : Finding.bad(
              AREA, url + " answers " + status + ".", "Read what it says: curl -s " + url);
    } catch (IOException e) {
      return Finding.bad(AREA, url + " does not answer (" + e.getMessage() + ").", who);
    }
  }

  private static int status(String url) throws IOException {
    HttpURLConnection call = (HttpURLConnection) new URL(url).openConnection();
    call.setConnectTimeout(PATIENCE_MILLIS);
    call.setReadTimeout(PATIENCE_MILLIS);
    try {
      return call.getResponseCode();
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
