package witnessmark.pipeline;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.decode.Scanned;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.scan.Code;
import witnessmark.scan.Meant;
import witnessmark.scan.Reader;

/** Puts on record what a scan means at its station, and what it does. */
final class Scans {
  /** Scanners read a label twice, and brokers deliver twice; nobody scans twice so fast. */
  private static final Duration TWICE = Duration.ofSeconds(3);

  private Scans() {}

  static Outcome take(Shop shop, String station, Arrival arrival, Scanned scanned, Seen seen) {
    Meant meant =
        again(station, arrival, scanned, seen)
            ? Meant.repeated(station)
            : Reader.read(
                shop,
                new Code(scanned.scan(), station, scanned.operator(), arrival.at()),
                seen::entry);
    List<Entry> entries = new ArrayList<>();
    entries.add(
        new Entry.Scan(
            arrival.at(),
            station,
            arrival.source(),
            scanned.scan(),
            scanned.operator(),
            meant.job(),
            meant.fastener(),
            meant.procedure(),
            meant.question(),
            meant.meaning(),
            meant.text()));
    entries.addAll(meant.entries());
    return new Outcome(entries, Optional.empty(), false);
  }

  private static boolean again(String station, Arrival arrival, Scanned scanned, Seen seen) {
    return seen.scan(station)
        .filter(last -> last.scan().equals(scanned.scan()))
        .filter(last -> last.operator().equals(scanned.operator()))
        .filter(last -> last.source().equals(arrival.source()))
        .filter(last -> arrival.redelivered() || soon(last.at(), arrival.at()))
        .isPresent();
  }

  private static boolean soon(Instant before, Instant now) {
    return !now.isBefore(before) && !now.isAfter(before.plus(TWICE));
  }
}
