package witnessmark.systemd;

import com.sun.jna.Library;
import com.sun.jna.Native;
import java.util.Map;

/** The one function of systemd's library that is called, as {@code man 3 sd_notify} has it. */
interface Libsystemd extends Library {
  /**
   * Sends a datagram to the socket that {@code NOTIFY_SOCKET} names.
   *
   * @return above 0 when it was sent, 0 when there is no such socket, below 0 an error's number
   */
  int sd_notify(int unsetEnvironment, String state);

  /** Loads the library. */
  static Libsystemd load() {
    // Left to itself, JNA unpacks its native part below the home directory, which is where the log
    // is. Beside those of the other libraries it is out of the way.
    if (System.getProperty("jna.tmpdir") == null) {
      System.setProperty("jna.tmpdir", System.getProperty("java.io.tmpdir"));
    }
    return Native.load(
        "libsystemd.so.0", Libsystemd.class, Map.of(Library.OPTION_STRING_ENCODING, "UTF-8"));
  }
}
