package witnessmark.pipeline;

import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.torque.TorqueEvent;

/**
 * What came of one arrival.
 *
 * @param entries what goes on record; none for a repeat of an event already there
 * @param event the torque event, where it was one
 * @param repeat whether it was a repeat
 */
public record Outcome(List<Entry> entries, Optional<TorqueEvent> event, boolean repeat) {
  public Outcome {
    entries = List.copyOf(entries);
  }

  static Outcome recorded(Entry entry) {
    return new Outcome(List.of(entry), Optional.empty(), false);
  }
}
