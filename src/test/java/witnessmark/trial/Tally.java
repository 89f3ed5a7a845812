package witnessmark.trial;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** What was counted for one scene. */
final class Tally {
  private final Map<Happened, Map<Recorded, Long>> table = new EnumMap<>(Happened.class);
  private final Map<String, Long> examples = new TreeMap<>();
  long jobs;
  long closed;
  long closedLoose;
  long abandoned;
  long falseAlarms;
  long readings;
  long rereads;
  long unannounced;

  void count(Happened what, Recorded how) {
    table.computeIfAbsent(what, w -> new EnumMap<>(Recorded.class)).merge(how, 1L, Long::sum);
  }

  void example(String what) {
    examples.merge(what, 1L, Long::sum);
  }

  Map<String, Long> examples() {
    return examples;
  }

  long of(Happened what, Recorded how) {
    return table.getOrDefault(what, Map.of()).getOrDefault(how, 0L);
  }

  long of(Happened what) {
    return table.getOrDefault(what, Map.of()).values().stream().mapToLong(Long::longValue).sum();
  }

  long of(Recorded how) {
    return table.values().stream().mapToLong(row -> row.getOrDefault(how, 0L)).sum();
  }

  /** Tightenings without any fault of the person's or the wrench's. */
  long good() {
    return of(Happened.GOOD) + of(Happened.GOOD_LATE);
  }

  void add(Tally other) {
    other.table.forEach(
        (what, row) ->
            row.forEach(
                (how, n) ->
                    table
                        .computeIfAbsent(what, w -> new EnumMap<>(Recorded.class))
                        .merge(how, n, Long::sum)));
    other.examples.forEach((k, n) -> examples.merge(k, n, Long::sum));
    jobs += other.jobs;
    closed += other.closed;
    closedLoose += other.closedLoose;
    abandoned += other.abandoned;
    falseAlarms += other.falseAlarms;
    readings += other.readings;
    rereads += other.rereads;
    unannounced += other.unannounced;
  }

  List<String> markdown() {
    List<Recorded> columns = new ArrayList<>();
    for (Recorded how : Recorded.values()) {
      if (of(how) > 0) {
        columns.add(how);
      }
    }
    List<String> lines = new ArrayList<>();
    StringBuilder head = new StringBuilder("| what happened |");
    StringBuilder rule = new StringBuilder("| --- |");
    for (Recorded how : columns) {
      head.append(' ').append(how.words()).append(" |");
      rule.append(" ---: |");
    }
    lines.add(head.toString());
    lines.add(rule.toString());
    for (Happened what : Happened.values()) {
      if (of(what) > 0) {
        StringBuilder row = new StringBuilder("| " + what.words() + " |");
        columns.forEach(how -> row.append(' ').append(of(what, how)).append(" |"));
        lines.add(row.toString());
      }
    }
    return lines;
  }
}
