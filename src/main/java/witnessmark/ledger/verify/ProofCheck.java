package witnessmark.ledger.verify;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Checks proofs that a log handed out, with nothing but the log's verifier key.
 *
 * <p>Any bytes give a result. Memory is bounded by {@link #LARGEST}.
 */
public final class ProofCheck {
  /** A larger file, in bytes, is refused unread. */
  public static final int LARGEST = 32 << 20;

  private static final int LISTED = 20;
  private static final int SHOWN = 400;

  private static final String ASK = ". Ask the shop for the verifier key with id ";

  private ProofCheck() {}

  private interface Check {
    ProofResult run() throws ProofFault;
  }

  /** Checks a proof of any kind; its content tells which. */
  public static ProofResult of(byte[] proof, VerifierKey key) {
    return result(
        proof,
        () -> {
          if (proof.length > 0 && proof[0] == TlogText.FIRST.charAt(0)) {
            return checkTlogProof(proof, key);
          }
          JsonProof json = JsonProof.read(proof);
          return json.entries != null ? checkBundle(json, key) : checkConsistency(json, key);
        });
  }

  /** Checks a proof bundle. */
  public static ProofResult bundle(byte[] proof, VerifierKey key) {
    return result(proof, () -> checkBundle(JsonProof.read(proof), key));
  }

  /** Checks a consistency proof. */
  public static ProofResult consistency(byte[] proof, VerifierKey key) {
    return result(proof, () -> checkConsistency(JsonProof.read(proof), key));
  }

  /** Checks a C2SP tlog-proof file whose {@code extra} line holds the entry's bytes. */
  public static ProofResult tlogProof(byte[] proof, VerifierKey key) {
    return result(proof, () -> checkTlogProof(proof, key));
  }

  private static ProofResult result(byte[] proof, Check check) {
    try {
      if (proof.length > LARGEST) {
        throw new ProofFault("the proof is larger than " + LARGEST + " bytes");
      }
      return check.run();
    } catch (ProofFault e) {
      return new ProofResult.Refused(List.of(shown(e.getMessage())));
    }
  }

  /** What a proof made by a stranger may put before a person: no control characters, no flood. */
  private static String shown(String sentence) {
    String one = sentence.replaceAll("\\p{Cntrl}", "?");
    return one.length() > SHOWN ? one.substring(0, SHOWN) + '…' : one;
  }

  private static ProofResult checkBundle(JsonProof proof, VerifierKey key) throws ProofFault {
    String note = proof.notes.get("checkpoint");
    if (note == null || proof.entries == null || proof.path != null || proof.notes.size() != 1) {
      throw new ProofFault(
          "expected a proof bundle: \"v\", \"checkpoint\", \"entries\" and perhaps \"vouchers\","
              + " nothing else");
    }
    if (proof.entries.isEmpty()) {
      throw new ProofFault("it holds no entry, so it proves nothing");
    }
    KeyChain keys = keys(proof.vouchers, key);
    Checkpoint checkpoint = signed(note, keys, "the checkpoint");
    inTree(proof.vouchers, checkpoint);
    return included(checkpoint, proof.entries, keys);
  }

  private static ProofResult checkTlogProof(byte[] proof, VerifierKey key) throws ProofFault {
    TlogText text = TlogText.read(utf8(proof));
    if (text.extra() == null) {
      throw new ProofFault(
          "it has no line extra with the entry's bytes, without which nothing can be proved");
    }
    KeyChain keys = new KeyChain(key);
    Checkpoint checkpoint;
    try {
      checkpoint = keys.open(text.note());
    } catch (OtherKeyException e) {
      // The form has no room for vouchers.
      throw new ProofFault(
          "the checkpoint: "
              + e.getMessage()
              + ASK
              + e.signer()
              + ", or for a bundle made anew (witnessmark ledger prove "
              + text.index()
              + " --bundle), which carries changes of the log's key");
    } catch (NoteException e) {
      throw new ProofFault("the checkpoint: " + e.getMessage());
    }
    return included(
        checkpoint, List.of(new JsonProof.Item(text.index(), text.extra(), text.path())), keys);
  }

  /** The keys that follow from the given one by the vouchers in a proof. */
  private static KeyChain keys(List<JsonProof.Item> vouchers, VerifierKey key) throws ProofFault {
    KeyChain keys = new KeyChain(key);
    long last = -1;
    for (JsonProof.Item voucher : vouchers) {
      rising(last, voucher.n(), "vouchers");
      last = voucher.n();
      try {
        keys.add(last, voucher.leaf());
      } catch (NoteException e) {
        throw new ProofFault("the voucher in entry " + last + ": " + e.getMessage());
      }
    }
    return keys;
  }

  /** Vouchers have to be in the log that they lead to, or it has not gone over to that key. */
  private static void inTree(List<JsonProof.Item> vouchers, Checkpoint checkpoint)
      throws ProofFault {
    PathCheck check = new PathCheck();
    Hashes hashes = new Hashes();
    byte[] leaf = new byte[Hashes.LENGTH];
    for (JsonProof.Item voucher : vouchers) {
      hashes.leaf(voucher.leaf(), leaf);
      try {
        check.inclusion(voucher.n(), checkpoint.size(), leaf, voucher.path(), checkpoint.root());
      } catch (ProofFault e) {
        throw new ProofFault("the voucher in entry " + voucher.n() + ": " + e.getMessage());
      }
    }
  }

  private static void rising(long last, long n, String what) throws ProofFault {
    if (n <= last) {
      throw new ProofFault(
          "expected " + what + " by number, each once; " + n + " stands after " + last);
    }
  }

  private static ProofResult included(
      Checkpoint checkpoint, List<JsonProof.Item> items, KeyChain keys) throws ProofFault {
    PathCheck check = new PathCheck();
    Hashes hashes = new Hashes();
    byte[] root = checkpoint.root();
    byte[] leaf = new byte[Hashes.LENGTH];
    List<ProofResult.Entry> entries = new ArrayList<>();
    List<String> faults = new ArrayList<>();
    long last = -1;
    for (JsonProof.Item item : items) {
      rising(last, item.n(), "entries");
      last = item.n();
      hashes.leaf(item.leaf(), leaf);
      try {
        check.inclusion(item.n(), checkpoint.size(), leaf, item.path(), root);
        entries.add(new ProofResult.Entry(item.n(), item.leaf()));
      } catch (ProofFault e) {
        faults.add("entry " + item.n() + ": " + e.getMessage());
      }
    }
    if (faults.isEmpty()) {
      return new ProofResult.Included(checkpoint, entries, keys.steps());
    }
    int more = faults.size() - LISTED;
    List<String> listed = new ArrayList<>(faults.subList(0, Math.min(LISTED, faults.size())));
    if (more > 0) {
      listed.add(more + " more entries are not proved");
    }
    return new ProofResult.Refused(listed);
  }

  private static ProofResult checkConsistency(JsonProof proof, VerifierKey key) throws ProofFault {
    String old = proof.notes.get("old");
    String now = proof.notes.get("new");
    if (old == null
        || now == null
        || proof.path == null
        || proof.entries != null
        || proof.notes.size() != 2) {
      throw new ProofFault(
          "expected a proof bundle (\"v\", \"checkpoint\", \"entries\") or a consistency proof"
              + " (\"v\", \"old\", \"new\", \"path\"), found neither");
    }
    KeyChain keys = keys(proof.vouchers, key);
    Checkpoint earlier = signed(old, keys, "the earlier checkpoint");
    Checkpoint later = signed(now, keys, "the later checkpoint");
    inTree(proof.vouchers, later);
    new PathCheck()
        .consistency(earlier.size(), earlier.root(), later.size(), later.root(), proof.path);
    return new ProofResult.GoesOn(earlier, later, keys.steps());
  }

  private static Checkpoint signed(String note, KeyChain keys, String which) throws ProofFault {
    try {
      return keys.open(note);
    } catch (OtherKeyException e) {
      // Else the changes of the key are at hand, and it was none of them.
      boolean old = keys.steps().isEmpty();
      throw new ProofFault(
          which
              + ": "
              + e.getMessage()
              + (old
                  ? ASK
                      + e.signer()
                      + ", which was in force when this was made, or have it made anew: what is made"
                      + " today carries the changes of the log's key"
                  : ""));
    } catch (NoteException e) {
      throw new ProofFault(which + ": " + e.getMessage());
    }
  }

  private static String utf8(byte[] bytes) throws ProofFault {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw new ProofFault("expected text in UTF-8, found other bytes");
    }
  }
}
