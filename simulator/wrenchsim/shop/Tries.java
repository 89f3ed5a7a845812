package wrenchsim.shop;

import java.util.function.Consumer;
import wrenchsim.wire.ExpectMessage;

/** Stops what never helps, so that no fastener is turned for ever. */
final class Tries {
  private static final int MOST = 6;

  private final Consumer<String> warn;
  private String lastWork = "";
  private int tries;
  private String hopelessWork = "";

  Tries(Consumer<String> warn) {
    this.warn = warn;
  }

  /** Counts a try at what is expected. */
  void count(ExpectMessage heard) {
    String work = Task.work(heard);
    tries = work.equals(lastWork) ? tries + 1 : 1;
    lastWork = work;
  }

  /** Something was reached by the last try. */
  void progress() {
    tries = 0;
  }

  /** Whether what is expected was tried too often; says so once. */
  boolean isHopeless(ExpectMessage heard) {
    if (tries < MOST && hopelessWork.isEmpty()) {
      return false;
    }
    String work = Task.work(heard);
    if (tries >= MOST && work.equals(lastWork) && !work.equals(hopelessWork)) {
      hopelessWork = work;
      warn.accept(
          "tried %s %d times and it is still expected; waiting until something else is"
              .formatted(heard.expect().get(0).fastener(), tries));
    }
    return work.equals(hopelessWork);
  }
}
