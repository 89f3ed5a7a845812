package wrenchsim.wrench;

import java.io.IOException;
import java.util.List;

/** The way a wrench speaks: takes a reading and keeps it until the other side has taken it. */
public interface Sender {
  /**
   * Sends a reading; the very same bytes when called with the same reading again.
   *
   * @throws IOException when the wire has been dead for too long
   */
  void send(Reading reading) throws IOException;

  /**
   * Sends what was stored, one reading after the other unless the wire has a form for it.
   *
   * @throws IOException when the wire has been dead for too long
   */
  default void sendStored(List<Reading> burst) throws IOException {
    for (Reading reading : burst) {
      send(reading);
    }
  }
}
