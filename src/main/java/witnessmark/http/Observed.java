package witnessmark.http;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.link.LinkStatus;
import witnessmark.pipeline.Counts;
import witnessmark.publish.HealthNow;

/**
 * The bridge as it is looked at.
 *
 * @param health as of now
 * @param counts of the writer
 * @param fill how much of the room is taken, 0 to 1, that messages have which their senders keep
 *     ({@code true}), or the others
 * @param links how the links stand
 * @param outlets the links that are told, by name
 * @param files of the log
 * @param opening opens the log for reading
 */
public record Observed(
    Supplier<HealthNow> health,
    Counts counts,
    Function<Boolean, Double> fill,
    Supplier<List<LinkStatus>> links,
    List<String> outlets,
    LedgerFiles files,
    Supplier<Reading> opening) {
  public Observed {
    outlets = List.copyOf(outlets);
  }

  /** The version that the build wrote into the jar. */
  static String version() {
    return Optional.ofNullable(Observed.class.getPackage().getImplementationVersion())
        .orElse("unknown");
  }
}
