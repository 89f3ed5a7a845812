package witnessmark.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A serial port that is open, and nobody else's. */
final class Line implements AutoCloseable {
  // errno values of Linux, from memory: EACCES, EPERM, EAGAIN (the lock is taken), EBUSY, EISDIR,
  // ENOTTY.
  private static final int EPERM = 1;
  private static final int EAGAIN = 11;
  private static final int EACCES = 13;
  private static final int EBUSY = 16;
  private static final int EISDIR = 21;
  private static final int ENOTTY = 25;
  // The library's own number for a port this process has open already.
  private static final int OPEN_HERE = 2;
  private static final int READ_MILLIS = 500;

  private final SerialPort port;

  private Line(SerialPort port) {
    this.port = port;
  }

  /** Opens the port with an exclusive lock. */
  static Line open(String path, SerialSettings settings) throws PortException {
    if (Terminals.ruleOut(Path.of(path))) {
      throw new PortException(noPort(path));
    }
    SerialPort port;
    try {
      port = SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException e) {
      throw new PortException(missing(path));
    }
    port.setComPortParameters(
        settings.baud(),
        settings.dataBits(),
        settings.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT,
        parity(settings.parity()));
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    if (!port.openPort()) {
      throw new PortException(refusal(path, port.getLastErrorCode()));
    }
    return new Line(port);
  }

  /**
   * Reads what has come, waiting at most half a second for the first byte.
   *
   * @return how many bytes, 0 when none came, -1 when the line is broken
   */
  int read(byte[] buffer) {
    return port.readBytes(buffer, buffer.length);
  }

  /** Writes all of the bytes; blocks while the other side takes none. */
  boolean write(byte[] bytes) {
    int written = 0;
    while (written < bytes.length) {
      int now = port.writeBytes(bytes, bytes.length - written, written);
      if (now <= 0) {
        return false;
      }
      written += now;
    }
    return true;
  }

  @Override
  public void close() {
    port.closePort();
  }

  private static int parity(Parity parity) {
    return switch (parity) {
      case NONE -> SerialPort.NO_PARITY;
      case ODD -> SerialPort.ODD_PARITY;
      case EVEN -> SerialPort.EVEN_PARITY;
    };
  }

  private static String refusal(String path, int error) {
    if (!Files.exists(Path.of(path))) {
      return missing(path);
    }
    return switch (error) {
      case EAGAIN, EBUSY, OPEN_HERE -> "port " + path + " is in use by another program";
      case EACCES, EPERM ->
          "port "
              + path
              + " may not be opened by this user; add the user to the group that owns it"
              + " (often dialout)";
      case EISDIR, ENOTTY -> noPort(path);
      default -> "port " + path + " cannot be opened: system error " + error;
    };
  }

  private static String missing(String path) {
    return "port " + path + " is not plugged in";
  }

  private static String noPort(String path) {
    return "port " + path + " is not a serial port; correct port in the configuration";
  }
}
