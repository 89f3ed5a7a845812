package wrenchsim.line;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.io.IOException;
import wrenchsim.wire.LinkException;

/**
 * A serial port of this computer, 8 data bits, no parity, 1 stop bit.
 *
 * @param path e.g. {@code /dev/ttyUSB0}
 * @param baud bits a second
 */
public record RealPort(String path, int baud) implements Line {

  private static final int READ_MILLIS = 500;

  @Override
  public Ends open() throws LinkException {
    SerialPort port;
    try {
      port = SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException e) {
      throw new LinkException(
          "there is no serial port %s: plug it in, or name another (ls /dev/tty*)."
              .formatted(path));
    }
    port.setComPortParameters(baud, 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    if (!port.openPort()) {
      throw new LinkException(
          "the serial port %s cannot be opened (error %d): another program may hold it, or this user is not in its group (usually dialout)."
              .formatted(path, port.getLastErrorCode()));
    }
    return new PortEnds(port);
  }

  private record PortEnds(SerialPort port) implements Ends {
    @Override
    public int read(byte[] into) {
      return port.readBytes(into, into.length);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      int from = 0;
      while (from < bytes.length) {
        int written = port.writeBytes(bytes, bytes.length - from, from);
        if (written < 0) {
          throw new IOException("the serial port " + port.getSystemPortPath() + " is gone");
        }
        from += written;
      }
    }

    @Override
    public void close() {
      port.closePort();
    }
  }
}
