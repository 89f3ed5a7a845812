package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;

/** Takes a person's key out of force, as when it was lost. */
public record WithdrawKey(String badge, String by, String because) implements Command {
  /**
   * @throws IllegalArgumentException when there is no reason
   */
  public WithdrawKey {
    Because.check(because);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Ask.operator(shop, badge);
    if (shop.operators().get(badge).key().isEmpty()) {
      throw new Declined("Badge " + badge + " holds no key: nothing to withdraw.");
    }
    return List.of(new Entry.OperatorKeyWithdrawn(at, badge, by, because));
  }
}
