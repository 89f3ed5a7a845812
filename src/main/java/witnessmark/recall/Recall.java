package witnessmark.recall;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Every joint that a wrench touched since its last good calibration, judged anew.
 *
 * @param readings how many readings the wrench took in the time in question
 * @param joints to be called back first, first
 */
public record Recall(String wrench, Finding finding, long readings, List<Rejudged> joints) {
  public Recall {
    joints = List.copyOf(joints);
  }

  /** Which time is in question and what the wrench did in it, as a sentence. */
  public String inQuestion() {
    return "In question: "
        + day(finding.from())
        + " up to "
        + day(finding.to().minusMillis(1))
        + ", "
        + readings
        + " readings, "
        + joints.size()
        + " joints that stand by one of them.";
  }

  private static String day(Instant moment) {
    return moment.atZone(ZoneOffset.UTC).toLocalDate().toString();
  }

  /** How many joints there are of each outlook. */
  public Map<Outlook, Long> counts() {
    Map<Outlook, Long> counts = new EnumMap<>(Outlook.class);
    for (Outlook outlook : Outlook.values()) {
      counts.put(outlook, joints.stream().filter(j -> j.outlook() == outlook).count());
    }
    return counts;
  }

  /** Units with a joint that may be out of its band, to be called back first, first. */
  public List<String> units() {
    return joints.stream()
        .filter(j -> j.outlook().isOut())
        .map(j -> j.touch().unit())
        .distinct()
        .toList();
  }
}
