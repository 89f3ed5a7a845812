package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.Label;

/** Takes a wrench out of use until it is calibrated or enrolled anew. */
public record RetireWrench(String serial, String by, String because) implements Command {
  /**
   * @throws IllegalArgumentException when the serial number is no label or there is no reason
   */
  public RetireWrench {
    Label.check("wrench", serial);
    Because.check(because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Ask.wrench(shop, serial);
    return List.of(
        new Entry.CalibrationEnded(
            at,
            serial,
            at,
            CalibrationEnd.TAKEN_OUT_OF_USE,
            Optional.of(by),
            Optional.of(because)));
  }
}
