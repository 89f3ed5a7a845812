package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.List;

/**
 * The keys of a log in the order in which they signed, each vouched for by the one before.
 *
 * <p>One of them is trusted: the one that was given. Those after it are by their vouchers; those
 * before it are because the log that the newest one signs holds the entries that name them.
 */
final class KeyChain {
  private final VerifierKey given;
  private final List<Voucher> vouchers = new ArrayList<>();

  KeyChain(VerifierKey given) {
    this.given = given;
  }

  /** The log's name. */
  String name() {
    return given.name();
  }

  /**
   * Takes the next voucher of the log.
   *
   * @param n its entry's number, above those before
   * @throws NoteException when it is none, or not by the key that signs then, or for one that
   *     signed before; it counts for nothing then
   */
  void add(long n, byte[] entry) throws NoteException {
    Voucher next = Voucher.read(n, entry);
    if (!vouchers.isEmpty()) {
      VerifierKey signs = vouchers.get(vouchers.size() - 1).to();
      if (!next.from().same(signs)) {
        throw new NoteException(
            "vouches by the key with id "
                + next.from().id()
                + ", but the key with id "
                + signs.id()
                + " signs since entry "
                + vouchers.get(vouchers.size() - 1).n());
      }
    }
    if (next.to().same(next.from()) || vouchers.stream().anyMatch(v -> has(v, next.to()))) {
      throw new NoteException(
          "vouches for the key with id " + next.to().id() + ", which signed before");
    }
    vouchers.add(next);
  }

  private static boolean has(Voucher voucher, VerifierKey key) {
    return voucher.from().same(key) || voucher.to().same(key);
  }

  /**
   * The key that signs a tree of that many entries.
   *
   * @throws NoteException when the given key is none of the log's
   */
  VerifierKey at(long size) throws NoteException {
    if (vouchers.isEmpty()) {
      return given;
    }
    if (vouchers.stream().noneMatch(v -> has(v, given))) {
      throw new NoteException(
          "the key with id "
              + given.id()
              + " is none of those that the log was signed with, the first of which has the id "
              + vouchers.get(0).from().id()
              + ", the newest "
              + vouchers.get(vouchers.size() - 1).to().id());
    }
    for (Voucher voucher : vouchers) {
      if (size <= voucher.n()) {
        return voucher.from();
      }
    }
    return vouchers.get(vouchers.size() - 1).to();
  }

  /** Opens a checkpoint by the key that signs a tree of its size. */
  Checkpoint open(String note) throws NoteException {
    long size;
    try {
      size = Checkpoint.claimed(note, given.name()).size();
    } catch (NoteException e) {
      // No key opens it; the one that was given says best what is wrong with it.
      return Checkpoint.open(note, given);
    }
    return Checkpoint.open(note, at(size));
  }

  /** The changes of the key, by the number of their entries. */
  List<KeyStep> steps() {
    return vouchers.stream().map(v -> new KeyStep(v.n(), v.from().id(), v.to().id())).toList();
  }
}
