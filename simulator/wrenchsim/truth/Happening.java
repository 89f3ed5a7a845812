package wrenchsim.truth;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import wrenchsim.joint.Turn;
import wrenchsim.wire.JsonLine;
import wrenchsim.wire.WireTime;
import wrenchsim.wrench.Reading;

/**
 * One thing a hand did: a fastener turned, or a reading sent a second time.
 *
 * @param time the true time, whatever the wrench's clock says
 * @param act what was done
 * @param work where it belongs
 * @param turn what the joint did
 * @param reading what the wrench reports of it
 * @param mistake the mistake intended here, as written on the command line
 * @param stored whether the wrench was out of range and kept the reading for later
 */
public record Happening(
    Instant time,
    Act act,
    Work work,
    Turn turn,
    Reading reading,
    Optional<String> mistake,
    boolean stored) {

  public Happening {
    Objects.requireNonNull(time, "time");
    Objects.requireNonNull(act, "act");
    Objects.requireNonNull(work, "work");
    Objects.requireNonNull(turn, "turn");
    Objects.requireNonNull(reading, "reading");
    Objects.requireNonNull(mistake, "mistake");
  }

  /** The same reading sent once more. */
  public Happening again(Instant when, Optional<String> why) {
    return new Happening(when, Act.REDELIVER, work, turn, reading, why, false);
  }

  /** What a hand can do. */
  public enum Act {
    TIGHTEN("tighten"),
    LOOSEN("loosen"),
    REDELIVER("redeliver");

    private final String word;

    Act(String word) {
      this.word = word;
    }
  }

  /**
   * Where a happening belongs.
   *
   * @param job the job, where the station had one
   * @param unit the unit's number, where the station had a job
   * @param fastener the fastener the wrench was really on; absent in an open loop
   * @param expected the fastener that was due, which differs after a slip
   * @param pass the pass that was due
   */
  public record Work(
      Optional<String> job,
      Optional<String> unit,
      Optional<String> fastener,
      Optional<String> expected,
      Optional<String> pass) {

    /** A bolt that belongs to no job. */
    public static final Work NONE =
        new Work(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
  }

  /** The line of the truth file; {@code number} counts from 1. */
  public String json(long number) {
    return new JsonLine()
        .put("n", number)
        .put("time", WireTime.text(time))
        .put("act", act.word)
        .putText("job", work.job())
        .putText("unit", work.unit())
        .putText("fastener", work.fastener())
        .putText("expected", work.expected())
        .putText("pass", work.pass())
        .put("truenm", rounded(turn.peakNm()))
        .put("truedegrees", rounded(turn.degrees()))
        .put("before", turn.before().word())
        .put("after", turn.after().word())
        .put("wrench", reading.wrench())
        .putNumber("event", reading.event())
        .put("torque", reading.torque())
        .put("torqueunit", reading.unit().symbol())
        .putText("angle", reading.angle())
        .put("direction", reading.tightening() ? "cw" : "ccw")
        .putText("mistake", mistake)
        .putTrue("stored", stored)
        .toString();
  }

  /** The sentence a technician would follow. */
  public String sentence() {
    String number = reading.event().map(n -> "event " + n).orElse("its last event");
    if (act == Act.REDELIVER) {
      return "%s sends %s again (%s)"
          .formatted(
              reading.wrench(), number, mistake.map(m -> m + " on purpose").orElse("stored"));
    }
    return "%s %s %s: %s %s%s%s%s"
        .formatted(
            reading.wrench(),
            act == Act.LOOSEN ? "loosens" : "on",
            work.fastener().orElse("a loose bolt"),
            reading.torque(),
            reading.unit().symbol(),
            reading.angle().map(a -> ", " + a + " deg").orElse(""),
            mistake.map(m -> " (" + m + " on purpose)").orElse(""),
            stored ? ", stored" : "");
  }

  private static String rounded(double value) {
    return BigDecimal.valueOf(value).setScale(4, RoundingMode.HALF_UP).toPlainString();
  }
}
