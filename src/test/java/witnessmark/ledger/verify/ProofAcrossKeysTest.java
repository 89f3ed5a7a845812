package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static witnessmark.ledger.verify.KeyEntry.FIRST;
import static witnessmark.ledger.verify.KeyEntry.SECOND;
import static witnessmark.ledger.verify.KeyEntry.THIRD;

import java.util.ArrayList;
import java.util.List;
import java.util.StringJoiner;
import org.junit.jupiter.api.Test;

/** Proofs of a log whose key was changed, written after docs/proofs.md and by no code of ours. */
class ProofAcrossKeysTest {
  private static final int AT = 9;
  private static final int SIZE = 23;
  private static final List<byte[]> LEAVES = leaves(FIRST.voucher(SECOND, AT));

  private static List<byte[]> leaves(String voucher) {
    List<byte[]> leaves = new ArrayList<>(MadeProofs.leaves(SIZE));
    leaves.set(AT, MadeProofs.bytes(KeyEntry.of(FIRST, SECOND, voucher)));
    return leaves;
  }

  private static String array(List<byte[]> hashes) {
    StringJoiner joined = new StringJoiner(",", "[", "]");
    hashes.forEach(h -> joined.add('"' + MadeProofs.base64(h) + '"'));
    return joined.toString();
  }

  private static String item(List<byte[]> leaves, int n) {
    return "{\"entry\":"
        + n
        + ",\"leaf\":\""
        + MadeProofs.base64(leaves.get(n))
        + "\",\"path\":"
        + array(NaiveTree.path(n, leaves))
        + "}";
  }

  private static String note(TestKey key, List<byte[]> leaves, int size) {
    return key.checkpoint(size, ExportRoot.mth(leaves.subList(0, size)));
  }

  private static String bundle(List<byte[]> leaves, TestKey signer, String... vouchers) {
    return "{\"v\":1,\"checkpoint\":"
        + MadeProofs.text(note(signer, leaves, SIZE))
        + ",\"vouchers\":["
        + String.join(",", vouchers)
        + "],\"entries\":["
        + item(leaves, 7)
        + "]}";
  }

  private static String growth(String old, String... vouchers) {
    return "{\"v\":1,\"old\":"
        + MadeProofs.text(old)
        + ",\"new\":"
        + MadeProofs.text(note(SECOND, LEAVES, SIZE))
        + ",\"vouchers\":["
        + String.join(",", vouchers)
        + "],\"path\":"
        + array(NaiveTree.proof(5, LEAVES))
        + "}";
  }

  private static ProofResult check(String proof, TestKey key) {
    return ProofCheck.of(MadeProofs.bytes(proof), VerifierKey.parse(key.verifierKey()));
  }

  private static String fault(String proof, TestKey key) {
    ProofResult result = check(proof, key);
    assertThat(result).isInstanceOf(ProofResult.Refused.class);
    return ((ProofResult.Refused) result).faults().get(0);
  }

  @Test
  void aBundleWithTheVoucherChecksByTheOldKeyAndByTheNew() {
    String bundle = bundle(LEAVES, SECOND, item(LEAVES, AT));
    for (TestKey key : List.of(FIRST, SECOND)) {
      assertThat(check(bundle, key))
          .isInstanceOfSatisfying(
              ProofResult.Included.class,
              i -> {
                assertThat(i.keys()).singleElement().extracting(KeyStep::entry).isEqualTo(9L);
                assertThat(i.entries()).singleElement().extracting(e -> e.n()).isEqualTo(7L);
              });
    }
    assertThat(fault(bundle, THIRD)).contains("is none of those that the log was signed with");
  }

  @Test
  void withoutItsVoucherItChecksByTheNewKeyAlone() {
    String bundle = bundle(LEAVES, SECOND);
    assertThat(check(bundle, SECOND)).isInstanceOf(ProofResult.Included.class);
    assertThat(fault(bundle, FIRST)).startsWith("the checkpoint: is signed by the key with id ");
  }

  @Test
  void aVoucherThatIsNotInTheLogLeadsNowhere() {
    String other = item(LEAVES, AT).replace(MadeProofs.base64(LEAVES.get(AT)), elsewhere());
    assertThat(fault(bundle(LEAVES, SECOND, other), FIRST))
        .isEqualTo("the voucher in entry 9: its bytes and path do not lead to the signed root");
    // the voucher of the very entry, moved to another number
    String moved = item(LEAVES, AT).replace("\"entry\":9", "\"entry\":8");
    assertThat(fault(bundle(LEAVES, SECOND, moved), FIRST))
        .startsWith("the voucher in entry 8: its voucher says \"9\" for the number of its entry");
  }

  /** The same words in another entry: another time. */
  private static String elsewhere() {
    String entry = KeyEntry.of(FIRST, SECOND, FIRST.voucher(SECOND, AT));
    return MadeProofs.base64(MadeProofs.bytes(entry.replace("03.311Z", "04.311Z")));
  }

  @Test
  void forgedVouchersLeadNowhere() {
    for (String voucher :
        List.of(
            THIRD.voucher(SECOND, AT),
            FIRST.voucher(THIRD, AT),
            FIRST.voucher(SECOND, AT + 1),
            FIRST.voucher(SECOND, AT).replaceFirst("\n9\n", "\n09\n"))) {
      List<byte[]> leaves = leaves(voucher);
      assertThat(fault(bundle(leaves, SECOND, item(leaves, AT)), FIRST))
          .as(voucher)
          .startsWith("the voucher in entry 9: ");
    }
    List<byte[]> twice = new ArrayList<>(LEAVES);
    twice.set(AT + 2, MadeProofs.bytes(KeyEntry.of(FIRST, THIRD, FIRST.voucher(THIRD, AT + 2))));
    assertThat(fault(bundle(twice, THIRD, item(twice, AT), item(twice, AT + 2)), FIRST))
        .startsWith("the voucher in entry 11: vouches by the key with id ");
    assertThat(fault(bundle(LEAVES, SECOND, item(LEAVES, AT), item(LEAVES, AT)), FIRST))
        .isEqualTo("expected vouchers by number, each once; 9 stands after 9");
  }

  @Test
  void theOldKeySignsNothingBeyondItsVoucher() {
    assertThat(fault(bundle(LEAVES, FIRST, item(LEAVES, AT)), FIRST))
        .startsWith("the checkpoint: is signed by the key with id ");
  }

  @Test
  void aConsistencyProofGoesAcrossTheChange() {
    String growth = growth(note(FIRST, LEAVES, 5), item(LEAVES, AT));
    for (TestKey key : List.of(FIRST, SECOND)) {
      assertThat(check(growth, key))
          .isInstanceOfSatisfying(ProofResult.GoesOn.class, g -> assertThat(g.keys()).hasSize(1));
    }
    assertThat(fault(growth(note(SECOND, LEAVES, 5), item(LEAVES, AT)), FIRST))
        .startsWith("the earlier checkpoint: is signed by the key with id ");
    assertThat(fault(growth(note(FIRST, LEAVES, 5)), FIRST)).startsWith("the later checkpoint: ");
    assertThat(fault(growth(note(FIRST, LEAVES, 5)), SECOND))
        .startsWith("the earlier checkpoint: ");
  }
}
