package wrenchsim.shop;

import java.util.List;
import java.util.Optional;
import wrenchsim.wire.ScanMessage;
import wrenchsim.wire.TorqueMessage;
import wrenchsim.wrench.Reading;

/** Something that goes from the bench to the bridge. */
public sealed interface Message {

  /** The payload for the station's topic, {@code torque} or {@code scan}. */
  byte[] bytes();

  /**
   * Readings of one wrench.
   *
   * @param readings one, or what was stored, oldest first
   * @param stored whether they were stored, which makes an array of them
   */
  record Torque(List<Reading> readings, boolean stored) implements Message {
    public Torque {
      readings = List.copyOf(readings);
      if (readings.isEmpty() || (!stored && readings.size() > 1)) {
        throw new IllegalArgumentException(
            "a torque message has one reading, or one or more that were stored, but this one has "
                + readings.size());
      }
    }

    /** The serial number of the wrench. */
    public String wrench() {
      return readings.get(0).wrench();
    }

    @Override
    public byte[] bytes() {
      return stored ? TorqueMessage.encode(readings) : TorqueMessage.encode(readings.get(0));
    }
  }

  /**
   * A label that was scanned.
   *
   * @param label what it says
   * @param operator the badge of who scanned it, where that is known
   */
  record Scan(String label, Optional<String> operator) implements Message {
    @Override
    public byte[] bytes() {
      return ScanMessage.encode(label, operator);
    }
  }
}
