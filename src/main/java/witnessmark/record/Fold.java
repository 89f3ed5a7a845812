package witnessmark.record;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.wrench.Wrench;

/**
 * Follows the entries of some jobs through the program's own fold and keeps what a record needs.
 */
final class Fold {
  private final SortedMap<Long, Entry> entries;
  private final SortedMap<Long, byte[]> bytes;
  private final String origin;
  private final Map<Long, Signature> signatures = new HashMap<>();
  private final Map<String, Course> courses = new LinkedHashMap<>();
  private final Map<Long, Wrench> wrenches = new HashMap<>();
  private Shop shop = Shop.EMPTY;

  private Fold(SortedMap<Long, Entry> entries, SortedMap<Long, byte[]> bytes, String origin) {
    this.entries = entries;
    this.bytes = bytes;
    this.origin = origin;
  }

  /**
   * @param bytes of the same entries, which tell what is signed; or none
   * @param origin the log's own name
   */
  static Fold over(SortedMap<Long, Entry> entries, SortedMap<Long, byte[]> bytes, String origin) {
    Fold fold = new Fold(entries, bytes, origin);
    entries.forEach(fold::take);
    return fold;
  }

  List<JobRecord> records() {
    return courses.values().stream().map(c -> new Compiled(c, this).record()).toList();
  }

  private void take(long n, Entry entry) {
    if (entry instanceof Entry.TorqueTaken t) {
      shop.wrench(t.event().wrench(), t.moment()).ifPresent(w -> wrenches.put(n, w));
    }
    if (entry instanceof Entry.Disposed d && bytes.containsKey(n)) {
      signatures.put(n, Signature.of(shop, origin, n, d, bytes.get(n), entries::containsKey));
    }
    Optional<String> job = JobOf.entry(entry);
    if (job.isEmpty()) {
      shop = shop.after(n, entry);
      return;
    }
    if (entry instanceof Entry.JobOpened o) {
      shop = shop.after(n, entry);
      courses.put(o.job(), new Course(o, shop.released(o.procedure(), o.revision()).orElseThrow()));
    } else if (courses.containsKey(job.get())) {
      shop = shop.after(n, entry);
    } else {
      // of a job that the record is not about: a scan that opened one of them, or another unit's
      return;
    }
    courses.get(job.get()).take(n, entry, shop.jobs().get(job.get()));
  }

  Shop shop() {
    return shop;
  }

  /** Which wrenches of those readings were found out of tolerance after them. */
  List<OutOfTolerance> foundLater(List<Attempt> readings) {
    return new FoundLater(entries, readings).all();
  }

  /** The torque event of that entry. */
  Entry.TorqueTaken taken(long n) {
    if (entries.get(n) instanceof Entry.TorqueTaken t) {
      return t;
    }
    throw new IllegalStateException("entry " + n + ", a torque event, is not among them");
  }

  /** What stands behind that disposition. */
  Signature signature(long n) {
    return signatures.getOrDefault(n, Signature.NONE);
  }

  Optional<Wrench> wrench(long n) {
    return Optional.ofNullable(wrenches.get(n));
  }
}
