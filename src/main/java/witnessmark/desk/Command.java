package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;

/** Something a person asks for. */
public interface Command {
  /**
   * The entries that the command makes.
   *
   * @throws Declined when the shop as it stands does not allow it
   */
  List<Entry> decide(Shop shop, Instant at);
}
