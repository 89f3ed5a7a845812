package witnessmark.pipeline;

import witnessmark.entry.EntryJson;
import witnessmark.job.Shop;
import witnessmark.ledger.Live;
import witnessmark.ledger.Stored;

/** The shop that follows from entries on record. */
public final class Replay {
  private Replay() {}

  /** The shop as of the moment the live entries were read. */
  public static Shop of(Live live) {
    return after(Shop.EMPTY, live.entries()).sized(live.size()).counted(live.readings());
  }

  /** The shop after further entries. */
  public static Shop after(Shop shop, Iterable<Stored> entries) {
    Shop now = shop;
    for (Stored stored : entries) {
      now = now.after(stored.n(), EntryJson.read(stored.bytes()));
    }
    return now;
  }
}
