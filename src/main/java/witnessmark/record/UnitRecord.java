package witnessmark.record;

import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.entry.Entry;

/**
 * All that is on record of one unit, job by job.
 *
 * @param unit its number
 * @param jobs at least one, in the order in which they were opened
 */
public record UnitRecord(String unit, List<JobRecord> jobs) {
  /**
   * @throws IllegalArgumentException when there is no job, or one of another unit
   */
  public UnitRecord {
    jobs = List.copyOf(jobs);
    if (jobs.isEmpty() || jobs.stream().anyMatch(j -> !j.unit().equals(unit))) {
      throw new IllegalArgumentException("a unit's record has jobs, and they are of that unit");
    }
  }

  /**
   * What entries say of the unit that their jobs are about.
   *
   * @param entries by number: those of its jobs, and of the registers as far as these need them
   * @throws IllegalArgumentException when they have no job, or jobs of several units, or do not
   *     make a record
   */
  public static UnitRecord of(SortedMap<Long, Entry> entries) {
    return of(entries, new TreeMap<>(), "");
  }

  /**
   * The same of exact bytes, which also tell which decisions are signed.
   *
   * @param origin the log's own name, to which signatures are bound
   * @see #of(SortedMap)
   */
  public static UnitRecord ofBytes(SortedMap<Long, byte[]> bytes, String origin) {
    return of(Gather.read(bytes), bytes, origin);
  }

  private static UnitRecord of(
      SortedMap<Long, Entry> entries, SortedMap<Long, byte[]> bytes, String origin) {
    List<JobRecord> jobs;
    try {
      jobs = Fold.over(entries, bytes, origin).records();
    } catch (IllegalStateException | java.util.NoSuchElementException e) {
      throw new IllegalArgumentException("these entries make no record: " + e.getMessage(), e);
    }
    if (jobs.isEmpty()) {
      throw new IllegalArgumentException("these entries make no record: none opens a job");
    }
    return new UnitRecord(jobs.get(0).unit(), jobs);
  }

  /** Wrenches found out of tolerance after they had been used, once for each finding. */
  public List<OutOfTolerance> foundLater() {
    Map<Long, OutOfTolerance> found = new TreeMap<>();
    jobs.forEach(j -> j.foundLater().forEach(f -> found.putIfAbsent(f.entry(), f)));
    return List.copyOf(found.values());
  }

  /** Whether every job has ended, so that the record is final but for late findings. */
  public boolean ended() {
    return jobs.stream().allMatch(j -> j.outcome().ended());
  }
}
