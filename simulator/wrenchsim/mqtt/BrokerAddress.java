package wrenchsim.mqtt;

import java.util.Objects;
import java.util.Optional;

/**
 * Where the broker is and who we are there.
 *
 * @param uri e.g. {@code tcp://127.0.0.1:1883}
 * @param user the user name, where the broker asks for one
 * @param password the password, where the broker asks for one
 */
public record BrokerAddress(String uri, Optional<String> user, Optional<String> password) {

  public BrokerAddress {
    if (!uri.matches("(tcp|ssl)://[^\\s/]+:[0-9]{1,5}")) {
      throw new IllegalArgumentException(
          "a broker is written tcp://HOST:PORT or ssl://HOST:PORT, but got '" + uri + "'");
    }
    Objects.requireNonNull(user, "user");
    Objects.requireNonNull(password, "password");
  }

  @Override
  public String toString() {
    return uri;
  }
}
