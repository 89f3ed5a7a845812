package witnessmark.trial;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** What the trial is to show. */
final class Goals {
  private Goals() {}

  /** What was missed, in sentences; empty where every goal was reached. */
  static List<String> missed(Map<Scene, Tally> all) {
    List<String> missed = new ArrayList<>();
    all.forEach(
        (scene, tally) -> {
          long wrong = tally.of(Recorded.WRONG);
          switch (scene.telling()) {
            case ALWAYS -> none(scene, wrong + tally.closedLoose, "wrong credits", missed);
            case OVERLAPPING -> {
              long most = Math.max(wrong, tally.closedLoose);
              if (most * 10_000 > tally.readings) {
                missed.add(scene.title() + ": more than 1 wrong credit in 10,000 readings");
              }
            }
            case NEVER -> {
              if (wrong == 0) {
                missed.add(scene.title() + ": nothing went wrong, so that the trial shows nothing");
              }
            }
          }
          if (tally.falseAlarms * 1_000 > 2 * tally.good()) {
            missed.add(scene.title() + ": more than 2 false alarms in 1,000 good tightenings");
          }
          none(scene, tally.unannounced, "unseen mistakes that were not announced", missed);
        });
    return missed;
  }

  private static void none(Scene scene, long n, String what, List<String> missed) {
    if (n > 0) {
      missed.add(scene.title() + ": " + n + " " + what);
    }
  }
}
