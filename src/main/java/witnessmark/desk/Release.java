package witnessmark.desk;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import witnessmark.entry.Acknowledged;
import witnessmark.entry.Entry;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.Sanity;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Unfit;
import witnessmark.wrench.Wrench;

/**
 * Releases a procedure file under its revision.
 *
 * @param procedure what the file says, already checked
 * @param text the file, unchanged
 * @param acknowledged the findings that somebody has looked at; none stops a release
 */
public record Release(
    Procedure procedure, String text, List<Acknowledged> acknowledged, Optional<String> by)
    implements Command {
  public Release {
    acknowledged = List.copyOf(acknowledged);
    Set<String> once = new HashSet<>();
    for (Acknowledged each : acknowledged) {
      Because.check(each.because());
      if (!once.add(each.finding())) {
        throw new IllegalArgumentException(
            each.finding() + " is acknowledged twice; give one reason");
      }
    }
  }

  /** A release that acknowledges nothing. */
  public Release(Procedure procedure, String text, Optional<String> by) {
    this(procedure, text, List.of(), by);
  }

  /** What somebody should look at before the release, the enrolled wrenches reckoned in. */
  public static List<Finding> findings(Procedure procedure, Shop shop) {
    return findings(procedure, shop.wrenches().values().stream().map(Enrolments::newest).toList());
  }

  /** The same with these wrenches. */
  public static List<Finding> findings(Procedure procedure, List<Wrench> wrenches) {
    List<Finding> findings = new ArrayList<>(Sanity.findings(procedure));
    findings.addAll(Unfit.findings(procedure, wrenches));
    return List.copyOf(findings);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Optional<Released> same = shop.released(procedure.id(), procedure.revision());
    if (same.isPresent()) {
      throw new Declined(
          "Revision "
              + procedure.revision()
              + " of "
              + procedure.id()
              + " was released by entry "
              + same.get().entry()
              + (same.get().text().equals(text)
                  ? ", with this very text: nothing to do."
                  : ", with another text. A released revision never changes: raise the revision."));
    }
    acknowledges(shop);
    return List.of(
        new Entry.ProcedureReleased(
            at, procedure.id(), procedure.revision(), text, acknowledged, by));
  }

  private void acknowledges(Shop shop) {
    if (acknowledged.isEmpty()) {
      return;
    }
    if (by.isEmpty()) {
      throw new Declined("Who acknowledges a finding answers for it: give a badge (--by).");
    }
    List<String> found = findings(procedure, shop).stream().map(Finding::key).distinct().toList();
    for (Acknowledged each : acknowledged) {
      if (!found.contains(each.finding())) {
        throw new Declined(
            "Procedure "
                + procedure.id()
                + " has no finding \""
                + each.finding()
                + "\" to acknowledge; "
                + (found.isEmpty()
                    ? "it has none: release it without."
                    : "name one of " + Few.of(found) + "."));
      }
    }
  }
}
