package witnessmark.desk;

import java.util.Optional;
import java.util.OptionalInt;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Wrench;

/** What commands ask of the shop, declining in plain words when the answer is no. */
final class Ask {
  private Ask() {}

  static JobState job(Shop shop, String job) {
    JobState state = shop.jobs().get(job);
    if (state == null) {
      String next =
          shop.jobs().isEmpty()
              ? "none is. Open one."
              : "name one of " + Few.of(shop.jobs().keySet().stream().sorted().toList()) + ".";
      throw new Declined("No job " + job + " is open or suspended; " + next);
    }
    return state;
  }

  static void operator(Shop shop, String badge) {
    if (!shop.operators().containsKey(badge)) {
      throw new Declined(
          "Badge " + badge + " is not enrolled; enrol it first (operator enrol " + badge + ").");
    }
  }

  static void operator(Shop shop, Optional<String> badge) {
    badge.ifPresent(b -> operator(shop, b));
  }

  static Wrench wrench(Shop shop, String serial) {
    Enrolments enrolments = shop.wrenches().get(serial);
    if (enrolments == null) {
      throw new Declined(
          "Wrench " + serial + " is not enrolled; enrol it first (wrench enrol " + serial + ").");
    }
    return enrolments.newest();
  }

  static int fastener(JobState job, String name) {
    OptionalInt found = job.plan().fastener(name);
    if (found.isEmpty()) {
      throw new Declined(
          "Procedure "
              + job.plan().procedure().id()
              + " has no fastener \""
              + name
              + "\"; name one as step/position, e.g. "
              + job.plan().name(0)
              + ".");
    }
    return found.getAsInt();
  }
}
