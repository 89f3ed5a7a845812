package witnessmark.soak;

import java.util.ArrayList;
import java.util.List;
import witnessmark.bench.Sqlite;
import witnessmark.bench.Workshop;

/** What was sent beside what is on record. */
final class Count {
  private Count() {}

  static List<String> faults(Workshop shop, long readings, long probes, int units) {
    List<String> faults = new ArrayList<>();
    Sqlite log = shop.ledger();
    String events = "SELECT count(*) FROM trace WHERE kind = 'torque' AND station ";
    same(faults, "readings", readings, log.number(events + "<> 'probe';"));
    same(faults, "probes", probes, log.number(events + "= 'probe';"));
    same(faults, "closed jobs", units, closed(log, units));
    return faults;
  }

  /** The last ones may still be on their way. */
  private static long closed(Sqlite log, int units) {
    long closed = 0;
    for (int i = 0; i < 100 && closed < units; i++) {
      closed = log.number("SELECT count(*) FROM job WHERE status = 'closed';");
    }
    return closed;
  }

  private static void same(List<String> faults, String what, long sent, long recorded) {
    if (sent != recorded) {
      faults.add("Of " + sent + " " + what + ", " + recorded + " are on record.");
    }
  }
}
