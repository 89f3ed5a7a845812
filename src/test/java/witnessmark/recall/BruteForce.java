package witnessmark.recall;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import witnessmark.entry.CalibrationPoint;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.torque.Torque;

/** A recall computed again in the plainest way: every pair of readings, every error between. */
final class BruteForce {
  private static final int STEPS = 200;

  private final List<Entry> log;
  private final List<Long> readings = new ArrayList<>();
  private Entry.WrenchCalibrated found;
  private Instant from;
  private List<CalibrationPoint> left = List.of();

  BruteForce(List<Entry> log) {
    this.log = log;
    for (Entry entry : log) {
      if (entry instanceof Entry.WrenchCalibrated c) {
        found = c;
      }
    }
    for (Entry entry : log) {
      if (entry instanceof Entry.WrenchEnrolled e && e.wrench().equals("TW-1")) {
        from = e.calibrated();
      } else if (entry instanceof Entry.WrenchCalibrated c
          && c != found
          && !c.calibrated().isBefore(from)
          && c.calibrated().isBefore(found.calibrated())) {
        from = c.calibrated();
        left = c.left();
      }
    }
    for (long n = 0; n < log.size(); n++) {
      if (log.get((int) n) instanceof Entry.TorqueTaken t
          && t.event().wrench().equals("TW-1")
          && !t.moment().isBefore(from)
          && t.moment().isBefore(end())) {
        readings.add(n);
      }
    }
    readings.sort(
        (a, b) -> {
          int order = taken(a).moment().compareTo(taken(b).moment());
          return order != 0 ? order : Long.compare(a, b);
        });
  }

  /** What becomes of each standing reading, by entry. */
  Map<Long, Outlook> outlooks() {
    Map<Long, Outlook> found = new TreeMap<>();
    readings.stream().filter(this::stands).forEach(n -> found.put(n, outlook(n)));
    return found;
  }

  /** Whether some torque in it comes so near to a limit that double arithmetic may not decide. */
  boolean tooNear(long n) {
    return errors(n).stream()
        .mapToDouble(e -> shown(n) / (1 + e / 100))
        .anyMatch(t -> Math.abs(t - low(n)) < 1e-9 || Math.abs(t - high(n)) < 1e-9);
  }

  private boolean stands(long n) {
    Judged mine = judged(n);
    boolean touches =
        mine.effect() == Effect.CREDITED
            || mine.effect() == Effect.NONCONFORMING
            || mine.effect() == Effect.RECHECKED;
    if (mine.fastener().isEmpty() || !touches) {
      return false;
    }
    for (long other = 0; other < log.size(); other++) {
      if (log.get((int) other) instanceof Entry.TorqueTaken t
          && t.job().equals(taken(n).job())
          && judged(other).fastener().equals(mine.fastener())
          && later(other, n)
          && (judged(other).effect() == Effect.CREDITED
              || judged(other).effect() == Effect.NONCONFORMING
              || judged(other).effect() == Effect.LOOSENED)) {
        return false;
      }
    }
    return true;
  }

  private boolean later(long other, long n) {
    int order = taken(other).place().compareTo(taken(n).place());
    return order > 0 || (order == 0 && other > n);
  }

  /** As the last entry about it says. */
  private Judged judged(long n) {
    Judged judged = taken(n).judged();
    for (Entry entry : log) {
      if (entry instanceof Entry.Reread r && r.rereads() == n) {
        judged = r.judged();
      }
    }
    return judged;
  }

  private Outlook outlook(long n) {
    double atFound = error(found.found(), n);
    double atStart = left.isEmpty() ? 0 : error(left, n);
    double time =
        (double) Duration.between(from, taken(n).moment()).toMillis()
            / Duration.between(from, end()).toMillis();
    double use = (readings.indexOf(n) + 1.0) / readings.size();
    boolean byTime = out(n, atStart + (atFound - atStart) * time);
    boolean byUse = out(n, atStart + (atFound - atStart) * use);
    if (out(n, atFound)) {
      return byTime && byUse ? Outlook.OUT : Outlook.OUT_IF_WRONG_FROM_THE_START;
    }
    return errors(n).stream().anyMatch(e -> out(n, e))
        ? Outlook.OUT_AT_A_SMALLER_ERROR
        : Outlook.IN_WHATEVER_THE_ERROR;
  }

  /** From none, and from that at the start, to that as found. */
  private List<Double> errors(long n) {
    double atFound = error(found.found(), n);
    double atStart = left.isEmpty() ? 0 : error(left, n);
    List<Double> errors = new ArrayList<>();
    for (int i = 0; i <= STEPS; i++) {
      errors.add(atFound * i / STEPS);
      errors.add(atStart + (atFound - atStart) * i / STEPS);
    }
    return errors;
  }

  private static double mean(CalibrationPoint point) {
    double indicated = newtonMetres(point.indicated());
    return point.reference().stream()
        .mapToDouble(r -> 100 * (indicated - newtonMetres(r)) / newtonMetres(r))
        .average()
        .orElseThrow();
  }

  private double error(List<CalibrationPoint> points, long n) {
    double x = newtonMetres(taken(n).event().torque());
    CalibrationPoint below = null;
    CalibrationPoint above = null;
    for (CalibrationPoint p : points) {
      double at = newtonMetres(p.indicated());
      if (at <= x && (below == null || at > newtonMetres(below.indicated()))) {
        below = p;
      }
      if (at >= x && (above == null || at < newtonMetres(above.indicated()))) {
        above = p;
      }
    }
    if (below == null || above == null || below == above) {
      return mean(below == null ? above : below);
    }
    double x0 = newtonMetres(below.indicated());
    double x1 = newtonMetres(above.indicated());
    return mean(below) + (mean(above) - mean(below)) * (x - x0) / (x1 - x0);
  }

  private boolean out(long n, double error) {
    double torque = shown(n) / (1 + error / 100);
    return torque < low(n) || torque > high(n);
  }

  private double shown(long n) {
    return newtonMetres(taken(n).event().torque());
  }

  private double low(long n) {
    return newtonMetres(Torque.parse(judged(n).low().orElseThrow()));
  }

  private double high(long n) {
    return newtonMetres(Torque.parse(judged(n).high().orElseThrow()));
  }

  private Instant end() {
    return found.calibrated().plus(Duration.ofDays(1));
  }

  private Entry.TorqueTaken taken(long n) {
    return (Entry.TorqueTaken) log.get((int) n);
  }

  private static double newtonMetres(Torque torque) {
    return torque.newtonMetres().doubleValue();
  }
}
