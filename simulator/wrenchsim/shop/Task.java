package wrenchsim.shop;

import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
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
  private static final Pattern NUMBERED = Pattern.compile("(.*/)([0-9]{1,6})");

  /**
   * The fastener that is taken for the due one by a slip: the next one listed, or else the next
   * number; empty where neither tells.
   */
  Optional<String> neighbour() {
    List<Expected> listed = heard.expect();
    int next = listed.indexOf(due) + 1;
    if (next < listed.size()) {
      return Optional.of(listed.get(next).fastener());
    }
    Matcher numbered = NUMBERED.matcher(due.fastener());
    return numbered.matches()
        ? Optional.of(numbered.group(1) + (Integer.parseInt(numbered.group(2)) + 1))
        : Optional.empty();
  }

  /** What two expectations share when they ask for the same work, whatever their words. */
  static String work(ExpectMessage heard) {
    StringBuilder work = new StringBuilder();
    work.append(heard.state()).append(' ').append(heard.job()).append(' ').append(heard.done());
    heard.expect().forEach(e -> work.append(' ').append(e.fastener()).append(':').append(e.pass()));
    return work.toString();
  }
}
