package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;

/**
 * Enrols the public half of a person's key, in place of the one before.
 *
 * @param badge an enrolled badge
 * @param publicKey the 32 bytes of an Ed25519 public key in base64
 */
public record EnrolKey(String badge, String publicKey, String by) implements Command {
  public EnrolKey {
    Objects.requireNonNull(publicKey, "publicKey");
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Ask.operator(shop, badge);
    shop.operators().values().stream()
        .filter(o -> o.key().filter(k -> k.publicKey().equals(publicKey)).isPresent())
        .findFirst()
        .ifPresent(
            o -> {
              throw new Declined(
                  "That key is in force already, for "
                      + o.badge()
                      + " (entry "
                      + o.key().orElseThrow().entry()
                      + "). Name the file of a new one (operator key make).");
            });
    return List.of(new Entry.OperatorKeyEnrolled(at, badge, publicKey, by));
  }
}
