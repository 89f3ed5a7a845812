package witnessmark.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.entry.Entry;

/**
 * How many messages of which source were heard and could neither be recorded nor kept, until an
 * entry states it. For any thread.
 */
final class Missed {
  /** So many sources are told apart; those of all others are counted together. */
  static final int SOURCES = 1000;

  private static final String OTHERS = "other sources";

  private record Tally(Optional<String> station, long messages, Instant first, Instant last) {
    Tally plus(Tally more) {
      return new Tally(
          station,
          messages + more.messages,
          first.isBefore(more.first) ? first : more.first,
          last.isAfter(more.last) ? last : more.last);
    }
  }

  private final Map<String, Tally> bySource = new LinkedHashMap<>();
  private final List<Entry.NotKept> stating = new ArrayList<>();

  /** One more of that message's source. */
  synchronized void count(Message message) {
    add(message.source(), new Tally(message.station(), 1, message.at(), message.at()));
  }

  private void add(String source, Tally more) {
    if (bySource.containsKey(source) || bySource.size() < SOURCES) {
      bySource.merge(source, more, Tally::plus);
    } else {
      Tally nowhere = new Tally(Optional.empty(), more.messages, more.first, more.last);
      bySource.merge(OTHERS, nowhere, Tally::plus);
    }
  }

  /** Whether there is anything to state. */
  synchronized boolean any() {
    return !bySource.isEmpty() || !stating.isEmpty();
  }

  /** The entries that state what was counted so far; to be answered by one of the two below. */
  synchronized List<Entry.NotKept> statement(Instant at, String because) {
    bySource.forEach(
        (source, t) ->
            stating.add(
                new Entry.NotKept(
                    at, t.station(), source, t.messages(), t.first(), t.last(), because)));
    bySource.clear();
    return List.copyOf(stating);
  }

  /** What no entry states yet. */
  synchronized List<Entry.NotKept> all() {
    statement(Instant.EPOCH, "");
    List<Entry.NotKept> all = List.copyOf(stating);
    unstated();
    return all;
  }

  /** The statement is on record; how many entries it is. */
  synchronized int stated() {
    int entries = stating.size();
    stating.clear();
    return entries;
  }

  /** The statement is not on record. */
  synchronized void unstated() {
    stating.forEach(
        e -> add(e.source(), new Tally(e.station(), e.messages(), e.first(), e.last())));
    stating.clear();
  }
}
