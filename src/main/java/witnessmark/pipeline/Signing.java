package witnessmark.pipeline;

import java.util.Optional;
import witnessmark.badge.PublicHalf;
import witnessmark.desk.Warrant;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Signed;
import witnessmark.job.OperatorKey;
import witnessmark.job.Shop;
import witnessmark.ledger.Draft;

/** Signs decisions on their way into the log, where their place in it is known. */
final class Signing {
  private final String origin;
  private final Optional<Pen> pen;

  /**
   * @param origin the log's own name
   * @param pen of whoever decides, where it is at hand
   */
  Signing(String origin, Optional<Pen> pen) {
    this.origin = origin;
    this.pen = pen;
  }

  /**
   * The next entry as the ledger takes it, signed where it must be.
   *
   * @throws witnessmark.desk.Declined when it must be and the right key is not at hand
   */
  Draft draft(Shop now, Entry entry) {
    Optional<OperatorKey> key = Warrant.of(now, entry);
    return key.isPresent() ? signed(now, entry, key.get()) : Drafts.of(entry);
  }

  private Draft signed(Shop now, Entry entry, OperatorKey key) {
    Pen with = pen.orElseThrow(() -> Warrant.keyless(now, key, Warrant.badge(entry)));
    byte[] naming = Signed.naming(EntryJson.bytes(entry), key.entry());
    byte[] text = Signed.text(origin, now.size(), naming);
    byte[] signature = with.sign(text);
    if (!new PublicHalf(key.publicKey()).signed(text, signature)) {
      throw Warrant.otherKey(key, Warrant.badge(entry));
    }
    return Drafts.of(entry, Signed.with(naming, signature));
  }
}
