package witnessmark.scan;

import java.time.Instant;
import java.util.List;
import witnessmark.desk.Command;
import witnessmark.entry.Entry;
import witnessmark.job.Due;
import witnessmark.job.Shop;

/**
 * A command carried out by a scan.
 *
 * @param entries what it puts on record after the scan's own entry
 * @param after the shop as it stands then
 */
record Acted(List<Entry> entries, Shop after) {
  /**
   * @throws witnessmark.desk.Declined when the shop does not allow the command
   */
  static Acted by(Command command, Shop shop, Instant at) {
    Shop now = shop.sized(shop.size() + 1); // the scan's own entry comes first
    List<Entry> entries = command.decide(now, at);
    for (Entry entry : entries) {
      now = now.after(now.size(), entry);
    }
    return new Acted(entries, now);
  }

  /** What the job waits for then, on one line. */
  String next(String job) {
    return next(after, job);
  }

  /** What the job waits for, on one line. */
  static String next(Shop shop, String job) {
    return Due.of(shop.jobs().get(job)).line();
  }
}
