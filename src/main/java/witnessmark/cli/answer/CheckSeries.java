package witnessmark.cli.answer;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.wrench.Deviation;

/**
 * The checks of a wrench at one torque since its newest calibration, which may have adjusted it.
 *
 * @param indicated the torque, as the newest of them has it
 * @param permissible the deviation permitted at the newest, in per cent
 * @param checks in order
 */
public record CheckSeries(String indicated, double permissible, List<Check> checks) {
  /**
   * A check.
   *
   * @param deviation mean of its readings, in per cent of the reference
   */
  public record Check(long n, Instant at, double deviation) {}

  public CheckSeries {
    checks = List.copyOf(checks);
  }

  public List<Double> deviations() {
    return checks.stream().map(Check::deviation).toList();
  }

  /** The series of a wrench, by rising torque. */
  public static List<CheckSeries> of(Reading reading, String wrench) {
    Map<BigDecimal, CheckSeries> byTorque = new TreeMap<>();
    long[] calibrated = {-1};
    find(reading, wrench, "wrench-calibrated", (n, e) -> calibrated[0] = n);
    find(
        reading,
        wrench,
        "wrench-checked",
        (n, e) -> {
          if (n > calibrated[0]) {
            add(byTorque, n, (Entry.WrenchChecked) e);
          }
        });
    return List.copyOf(byTorque.values());
  }

  private static void add(Map<BigDecimal, CheckSeries> byTorque, long n, Entry.WrenchChecked e) {
    for (CalibrationPoint point : e.points()) {
      Check check = new Check(n, e.at(), Deviation.mean(point).doubleValue());
      byTorque.merge(
          point.indicated().newtonMetres().stripTrailingZeros(),
          new CheckSeries(
              point.indicated().toString(),
              point.permissible().value().doubleValue(),
              List.of(check)),
          CheckSeries::and);
    }
  }

  private CheckSeries and(CheckSeries newer) {
    List<Check> all = new ArrayList<>(checks);
    all.addAll(newer.checks());
    return new CheckSeries(newer.indicated(), newer.permissible(), all);
  }

  private interface Each {
    void take(long n, Entry entry);
  }

  private static void find(Reading reading, String wrench, String kind, Each each) {
    Optional<String> any = Optional.empty();
    reading.find(
        new Query(
            any, any, any, any, Optional.of(wrench), any, any, Optional.of(kind), any, any, any),
        s -> each.take(s.n(), EntryJson.read(s.bytes())));
  }
}
