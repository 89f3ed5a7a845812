package witnessmark.doctor;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import witnessmark.config.BridgeConfig;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Standing;
import witnessmark.wrench.Wrench;

/** What waits for a person in the shop: wrenches that are due, nonconformities that are open. */
final class Workshop {
  private static final Duration SOON = Duration.ofDays(30);

  private Workshop() {}

  static List<Finding> look(Shop shop, Instant now) {
    List<Finding> found = new ArrayList<>();
    List<Wrench> wrenches = shop.wrenches().values().stream().map(Enrolments::newest).toList();
    List<String> ended = named(shop, wrenches, now, Standing.NOT_IN_FORCE);
    List<String> soon = named(shop, wrenches, now, Standing.DUE_SOON);
    if (wrenches.isEmpty()) {
      found.add(
          Finding.warn(
              "wrenches",
              "None is enrolled, so no reading can be credited.",
              "Enrol one: witnessmark wrench enrol --help"));
    } else if (ended.isEmpty() && soon.isEmpty()) {
      found.add(
          Finding.good("wrenches", "All calibrations are in force (" + wrenches.size() + ")."));
    }
    String next =
        "See witnessmark wrench due, then enter the laboratory's certificate: witnessmark wrench calibrate --help";
    if (!ended.isEmpty()) {
      found.add(
          Finding.bad(
              "wrenches",
              "Not in force, so its readings are not credited: " + String.join(", ", ended) + ".",
              next));
    }
    if (!soon.isEmpty()) {
      found.add(Finding.warn("wrenches", "Due soon: " + String.join(", ", soon) + ".", next));
    }
    long open = shop.jobs().values().stream().mapToLong(Workshop::flaws).sum();
    found.add(
        open == 0
            ? Finding.good("nonconformities", "None is open.")
            : Finding.warn(
                "nonconformities",
                open + (open == 1 ? " is open." : " are open."),
                "Decide: witnessmark nonconformities --open"));
    return found;
  }

  /** Wrenches that are bound to links which the configuration does not have. */
  static List<Finding> bound(Shop shop, BridgeConfig config) {
    Set<String> links = new TreeSet<>();
    config.brokers().forEach(b -> links.add(b.settings().name()));
    config.ports().forEach(p -> links.add(p.settings().name()));
    List<Finding> found = new ArrayList<>();
    shop.wrenches()
        .forEach(
            (serial, enrolled) ->
                enrolled.sources().stream()
                    .filter(s -> !links.contains(s.link()))
                    .forEach(
                        s ->
                            found.add(
                                Finding.bad(
                                    "wrenches",
                                    serial
                                        + " is bound to "
                                        + s
                                        + ", and the configuration has no link of that name: "
                                        + String.join(", ", links)
                                        + ". What it sends another way counts for nothing.",
                                    "Bind it to one that is there: witnessmark wrench bind "
                                        + serial
                                        + " --from LINK --by BADGE"))));
    return found;
  }

  private static List<String> named(
      Shop shop, List<Wrench> wrenches, Instant now, Standing standing) {
    return wrenches.stream()
        .filter(
            w ->
                Standing.of(w, Optional.ofNullable(shop.uses().get(w.serial())), now, SOON)
                    == standing)
        .map(w -> w.serial() + " (" + w.due().atZone(ZoneOffset.UTC).toLocalDate() + ")")
        .sorted()
        .toList();
  }

  private static long flaws(JobState job) {
    return IntStream.range(0, job.plan().fasteners())
        .filter(f -> job.condition(f).flaw().isPresent())
        .count();
  }
}
