package witnessmark.recall;

import java.util.Arrays;

/** Which number each reading has among those of a wrench in time, for very many of them. */
final class Orders {
  private final long[] byEntry;
  private final long[] orders;

  /**
   * @param inTime the readings' entries, each once, the earliest reading first
   */
  Orders(long[] inTime) {
    byEntry = inTime.clone();
    Arrays.sort(byEntry);
    orders = new long[inTime.length];
    for (int i = 0; i < inTime.length; i++) {
      orders[Arrays.binarySearch(byEntry, inTime[i])] = i + 1L;
    }
  }

  /**
   * The number of an entry's reading, from 1.
   *
   * @throws IndexOutOfBoundsException when it is not among them
   */
  long of(long entry) {
    return orders[Arrays.binarySearch(byEntry, entry)];
  }
}
