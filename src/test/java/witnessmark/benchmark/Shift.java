package witnessmark.benchmark;

import java.util.ArrayList;
import java.util.List;

/** The readings of many jobs of one size, one list for each job, in the order they come. */
final class Shift {
  /** Readings of the expected fasteners, over all jobs. */
  private static final int READINGS = 20_000;

  private Shift() {}

  /** Every reading is a fresh one. */
  static List<List<Taken>> fresh(int fasteners) {
    List<Taken> job = new ArrayList<>();
    for (int i = 0; i < 2 * fasteners; i++) {
      job.add(Taken.fresh(i));
    }
    return jobs(fasteners, job);
  }

  /** Every fastener is hit again just after each of its passes; the last has nothing after it. */
  static List<List<Taken>> hitAgain(int fasteners) {
    List<Taken> job = new ArrayList<>();
    for (int i = 0; i < 2 * fasteners - 1; i++) {
      job.add(Taken.fresh(i));
      job.add(Taken.again(i));
    }
    job.add(Taken.fresh(2 * fasteners - 1));
    return jobs(fasteners, job);
  }

  private static List<List<Taken>> jobs(int fasteners, List<Taken> job) {
    List<List<Taken>> all = new ArrayList<>();
    for (int done = 0; done < READINGS; done += 2 * fasteners) {
      all.add(job);
    }
    return all;
  }

  /**
   * Of 200 readings, two are followed by a second hit, two are let go too low and gone on with, and
   * one comes late, after the three that follow it.
   */
  static List<List<Taken>> mixed(int fasteners) {
    List<List<Taken>> all = new ArrayList<>();
    for (int done = 0; done < READINGS; done += 2 * fasteners) {
      List<Taken> job = new ArrayList<>();
      for (int i = 0; i < 2 * fasteners; i++) {
        int turn = (done + i) % 200;
        if (turn == 102) {
          continue;
        }
        if (turn == 75 || turn == 175) {
          job.add(Taken.tooLow(i));
          job.add(Taken.rest(i));
        } else {
          job.add(Taken.fresh(i));
        }
        if (turn == 105) {
          job.add(Taken.late(i - 3, 3));
        }
        if (turn == 50 || turn == 150) {
          job.add(Taken.again(i));
        }
      }
      all.add(job);
    }
    return all;
  }
}
