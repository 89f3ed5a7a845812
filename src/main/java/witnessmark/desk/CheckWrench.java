package witnessmark.desk;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.CalibrationEnd;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.Label;
import witnessmark.wrench.Deviation;
import witnessmark.wrench.Wrench;

/** Enters a check of a wrench on the shop's own tester. */
public record CheckWrench(String serial, String tester, List<Tried> points, String by)
    implements Command {
  /**
   * @throws IllegalArgumentException when a text is no label, or nothing was tried
   */
  public CheckWrench {
    Label.check("wrench", serial);
    Label.check("tester", tester);
    points = List.copyOf(points);
    if (points.isEmpty()) {
      throw new IllegalArgumentException("a check has readings at one point or more");
    }
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Wrench wrench = Ask.wrench(shop, serial);
    Plausible.points(points, wrench);
    List<CalibrationPoint> judged = Tried.points(points, shop.rule(wrench.kind()));
    boolean within = Deviation.within(judged);
    List<Entry> entries = new ArrayList<>();
    entries.add(new Entry.WrenchChecked(at, serial, tester, judged, within, by));
    if (!within) {
      entries.add(
          new Entry.CalibrationEnded(
              at,
              serial,
              at,
              CalibrationEnd.CHECK_FAILED,
              Optional.of(by),
              Optional.of("checked on " + tester)));
    }
    return List.copyOf(entries);
  }
}
