package witnessmark.stats;

import java.util.List;

/**
 * A point of a control chart at which run rules show that something changed.
 *
 * @param index the point's place in the series, from 0
 * @param rules those that signal there, at least one
 */
public record Signal(int index, List<RunRule> rules) {
  public Signal {
    rules = List.copyOf(rules);
    if (index < 0 || rules.isEmpty()) {
      throw new IllegalArgumentException("a signal has a place and a rule");
    }
  }
}
