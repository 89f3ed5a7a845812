package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Collects findings; holds a bounded number of each subject and counts the rest. */
final class Findings {
  /** In the order of listing. */
  enum Subject {
    FILE,
    CHECKPOINT,
    ENTRY,
    TILE,
    JOB,
    TRACE
  }

  private final int limit;
  private final Map<Subject, List<Finding>> listed = new EnumMap<>(Subject.class);
  private final Map<Subject, Long> counted = new EnumMap<>(Subject.class);

  Findings(int limit) {
    this.limit = limit;
  }

  void add(Subject subject, Place place, String sentence) {
    counted.merge(subject, 1L, Long::sum);
    List<Finding> list = listed.computeIfAbsent(subject, s -> new ArrayList<>());
    if (list.size() < limit) {
      list.add(new Finding(place, sentence));
    }
  }

  boolean any(Subject subject) {
    return counted.containsKey(subject);
  }

  Report report(long size, byte[] root, List<KeyStep> keys) {
    List<Finding> all = listed.values().stream().flatMap(List::stream).limit(limit).toList();
    long count = counted.values().stream().mapToLong(Long::longValue).sum();
    return new Report(size, root, all, count - all.size(), keys);
  }
}
