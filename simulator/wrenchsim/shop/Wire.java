package wrenchsim.shop;

import java.io.IOException;

/** The way from the bench to a bridge. */
public interface Wire {
  /**
   * Sends a message; the very same bytes when called with the same message again.
   *
   * @throws IOException when the way has been dead for too long
   */
  void send(Message message) throws IOException;
}
