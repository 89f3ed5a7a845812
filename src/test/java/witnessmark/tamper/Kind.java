package witnessmark.tamper;

import java.util.Random;

/**
 * A way of changing a log.
 *
 * @param name on the page
 * @param weight its part of all edits
 * @param afterKill whether it is done to a log whose writer was killed, with its write-ahead log
 * @param change does it
 */
record Kind(String name, int weight, boolean afterKill, Change change) {
  /** One edit of a copy. */
  @FunctionalInterface
  interface Change {
    void of(Copy copy, Random random);
  }

  static Kind of(String name, int weight, Change change) {
    return new Kind(name, weight, false, change);
  }
}
