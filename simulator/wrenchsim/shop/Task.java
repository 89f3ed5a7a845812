package wrenchsim.shop;

import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/**
 * A fastener to do now, with the wrench to do it.
 *
 * @param heard the expectation it follows from
 * @param due the fastener that is due
 * @param tool the wrench taken
 */
record Task(ExpectMessage heard, Expected due, Tool tool) {

  /** The same with what is expected by now, where anything is to be tightened. */
  Task whileExpecting(ExpectMessage now) {
    return now.isTighten() && now != heard ? new Task(now, now.expect().get(0), tool) : this;
  }

  /** What two expectations share when they ask for the same work, whatever their words. */
  static String work(ExpectMessage heard) {
    StringBuilder work = new StringBuilder();
    work.append(heard.state()).append(' ').append(heard.job()).append(' ').append(heard.done());
    heard.expect().forEach(e -> work.append(' ').append(e.fastener()).append(':').append(e.pass()));
    return work.toString();
  }
}
