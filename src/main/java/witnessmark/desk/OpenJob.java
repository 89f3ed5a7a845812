package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.JobState;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.procedure.Procedure;
import witnessmark.torque.Label;

/**
 * Opens a job on a unit at a station.
 *
 * @param revision the newest released one when empty
 */
public record OpenJob(
    String procedure, Optional<String> revision, String unit, String station, Optional<String> by)
    implements Command {
  public OpenJob {
    Label.check("unit", unit);
    ScannerCommands.notOne("unit", unit);
    StationName.check(station);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Released released = released(shop);
    shop.active(station).ifPresent(this::busy);
    shop.jobs().values().stream()
        .filter(j -> j.unit().equals(unit) && j.plan().procedure().id().equals(procedure))
        .findFirst()
        .ifPresent(this::unfinished);
    Procedure parsed = released.parse();
    if (!parsed.accepts(unit)) {
      throw new Declined(
          "Unit "
              + unit
              + " does not fit "
              + procedure
              + ", which is for units like "
              + parsed.unitPattern().orElseThrow()
              + ". Check both.");
    }
    return List.of(
        new Entry.JobOpened(
            at,
            "J-" + shop.size(),
            unit,
            station,
            procedure,
            released.revision(),
            released.entry(),
            by));
  }

  private Released released(Shop shop) {
    Optional<Released> found =
        revision.map(r -> shop.released(procedure, r)).orElseGet(() -> shop.newest(procedure));
    return found.orElseThrow(
        () -> {
          List<String> known =
              shop.procedures().stream()
                  .map(r -> r.procedure() + " revision " + r.revision())
                  .toList();
          return new Declined(
              "No released procedure "
                  + procedure
                  + revision.map(r -> " revision " + r).orElse("")
                  + "; "
                  + (known.isEmpty() ? "none is: release it first" : "name one of " + Few.of(known))
                  + ".");
        });
  }

  private void busy(JobState job) {
    throw new Declined(
        "Station "
            + station
            + " has job "
            + job.job()
            + " on unit "
            + job.unit()
            + "; suspend or close that first.");
  }

  private void unfinished(JobState job) {
    throw new Declined(
        "Unit "
            + unit
            + " has the unfinished job "
            + job.job()
            + " ("
            + job.status().code()
            + "); resume or abandon that.");
  }
}
