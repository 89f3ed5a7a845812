package witnessmark.benchmark;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import witnessmark.desk.EnrolWrench;
import witnessmark.torque.Torque;

/** The procedures, wrenches and readings that everything is measured with. */
final class Work {
  static final String STATION = "bench-1";
  static final String PROCEDURE = "RAM-210";
  private static final int GROUP = 10;
  private static final int WRENCHES = 4;

  private Work() {}

  /** Look-alike groups of ten fasteners, gone over twice: snug, then final. */
  static String procedure(int fasteners) {
    StringBuilder toml = new StringBuilder();
    toml.append("[procedure]\nid = \"RAM-210\"\nrevision = \"C\"\ntitle = \"Rear-axle module\"\n");
    for (int done = 0; done < fasteners; done += GROUP) {
      toml.append("[[step]]\nid = \"").append(step(done)).append("\"\nkind = \"tighten\"\n");
      toml.append("title = \"Axle carrier\"\nfasteners = ").append(GROUP).append("\n");
      toml.append("  [[step.pass]]\n  name = \"snug\"\n  torque = \"25 N.m\"\n");
      toml.append("  tolerance = \"20 %\"\n  [[step.pass]]\n  name = \"final\"\n");
      toml.append("  torque = \"50 N.m\"\n  tolerance = \"10 %\"\n");
    }
    return toml.toString();
  }

  private static String step(int fastener) {
    return "carrier-" + fastener / GROUP;
  }

  static String fastener(int index) {
    return step(index) + "/" + (index % GROUP + 1);
  }

  /** What the wrench must show for the nth pass, counted from 0, of a job done in order. */
  static String torque(int nth) {
    return nth / GROUP % 2 == 0 ? "25.4" : "49.7";
  }

  /** A torque below the band of that pass. */
  static String low(int nth) {
    return nth / GROUP % 2 == 0 ? "17.1" : "41.0";
  }

  /** Whether the nth is the last of its group in a pass. */
  static boolean endsPass(int nth) {
    return nth % GROUP == GROUP - 1;
  }

  /** Whether the nth is the last of its group at all. */
  static boolean endsFinal(int nth) {
    return nth % (2 * GROUP) == 2 * GROUP - 1;
  }

  static String wrench(int nth) {
    return "TW-041" + nth % WRENCHES;
  }

  static EnrolWrench enrolment(int nth, Instant now) {
    return new EnrolWrench(
        wrench(nth),
        Torque.parse("10 N.m"),
        Torque.parse("100 N.m"),
        now.minus(Duration.ofDays(1)),
        now.plus(Duration.ofDays(365)),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  static int wrenches() {
    return WRENCHES;
  }

  /** A reading as a wrench sends it; {@code fastener} may be empty. */
  static byte[] reading(int number, String wrench, String torque, String fastener) {
    String position = fastener.isEmpty() ? "" : ",\"fastener\":\"" + fastener + "\"";
    return ("{\"wrench\":\""
            + wrench
            + "\",\"event\":"
            + number
            + ",\"torque\":\""
            + torque
            + "\",\"unit\":\"N.m\",\"angle\":\"41.2\",\"direction\":\"cw\""
            + position
            + "}")
        .getBytes(StandardCharsets.UTF_8);
  }
}
