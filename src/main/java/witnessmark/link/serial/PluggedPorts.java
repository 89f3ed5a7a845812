package witnessmark.link.serial;

import com.fazecast.jSerialComm.SerialPort;
import java.util.Arrays;
import java.util.List;

/** The ports the operating system lists. */
public final class PluggedPorts implements PortFinder {
  @Override
  public List<FoundPort> ports() {
    return Arrays.stream(SerialPort.getCommPorts())
        .map(
            port ->
                new FoundPort(
                    port.getSystemPortPath(),
                    known(port.getSerialNumber()),
                    port.getVendorID(),
                    port.getProductID()))
        .toList();
  }

  /** The library says "Unknown" for a port without a serial number. */
  private static String known(String serial) {
    return serial == null || serial.equals("Unknown") ? "" : serial;
  }
}
