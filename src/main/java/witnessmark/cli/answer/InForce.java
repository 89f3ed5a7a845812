package witnessmark.cli.answer;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;
import witnessmark.wrench.Wrench;

/** How the newest calibration of each wrench stands, and what ended it where something did. */
public final class InForce {
  private record End(long n, Entry.CalibrationEnded ended) {}

  private final Map<String, End> ends = new HashMap<>();

  public static InForce of(Reading reading) {
    InForce all = new InForce();
    for (Stored stored : reading.registers(List.of("calibration-ended"), reading.size())) {
      Entry.CalibrationEnded ended = (Entry.CalibrationEnded) EntryJson.read(stored.bytes());
      all.ends.put(ended.wrench(), new End(stored.n(), ended));
    }
    return all;
  }

  /** e.g. {@code in force} or {@code NOT IN FORCE: check failed 2026-11-26}. */
  public String of(Wrench wrench, Instant now) {
    if (wrench.calibratedAt(now)) {
      return "in force";
    }
    End end = ends.get(wrench.serial());
    if (end != null && end.n() > wrench.enrolled()) {
      return "NOT IN FORCE: " + cause(end.ended()) + " " + day(end.ended().from());
    }
    return "NOT IN FORCE: was due " + day(wrench.due());
  }

  private static String cause(Entry.CalibrationEnded ended) {
    return ended.cause().code().replace('-', ' ');
  }

  private static String day(Instant moment) {
    return moment.atZone(ZoneOffset.UTC).toLocalDate().toString();
  }
}
