package witnessmark.pipeline;

import java.util.List;

/** Hears what the writer put on record, for figures. Must return at once and never throw. */
@FunctionalInterface
public interface Watch {
  /** Hears nothing. */
  Watch NONE = (outcomes, statements, nanos) -> {};

  /**
   * A group of messages is on disk.
   *
   * @param outcomes what came of each
   * @param statements how many entries beside theirs state what was not kept
   * @param nanos how long it took to decide about the group and to write it, in nanoseconds
   */
  void recorded(List<Outcome> outcomes, int statements, long nanos);
}
