package witnessmark.config;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.toml.Section;

/** Reads the {@code [http]} section. */
final class HttpSection {
  private static final String ALLOWED =
      "write an address as numbers and a port, e.g. \"127.0.0.1:9470\" or \"[::1]:9470\"";

  // Only numbers, so that reading the file asks no name server.
  private static final Pattern FORM =
      Pattern.compile("(?:([0-9]{1,3}(?:\\.[0-9]{1,3}){3})|\\[([0-9a-fA-F:.]+)\\]):([0-9]{1,5})");

  private HttpSection() {}

  static Optional<HttpConfig> read(Section s) {
    Optional<HttpConfig> found = s.requiredRead("listen", ALLOWED, HttpSection::address);
    boolean open = s.bool("open-to-network").orElse(false);
    s.finish();
    found
        .filter(h -> !open && !resolved(h.host()).isLoopbackAddress())
        .ifPresent(
            h ->
                s.fault(
                    "listen",
                    h.host() + " can be reached from other computers, and nothing asks who calls",
                    "listen on 127.0.0.1, or add open-to-network = true"));
    return found;
  }

  private static HttpConfig address(String text) {
    Matcher m = FORM.matcher(text);
    if (!m.matches()) {
      throw new IllegalArgumentException("\"" + text + "\" is no address with a port");
    }
    int port = Integer.parseInt(m.group(3));
    if (port < 1 || port > 65_535) {
      throw new IllegalArgumentException("port " + port + " is out of range");
    }
    String host = m.group(1) == null ? m.group(2) : m.group(1);
    resolved(host);
    return new HttpConfig(host, port);
  }

  private static InetAddress resolved(String host) {
    try {
      return InetAddress.getByName(host);
    } catch (UnknownHostException e) {
      throw new IllegalArgumentException("\"" + host + "\" is no address", e);
    }
  }
}
