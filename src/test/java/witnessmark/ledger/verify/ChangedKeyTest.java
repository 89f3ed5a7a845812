package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static witnessmark.ledger.verify.KeyEntry.FIRST;
import static witnessmark.ledger.verify.KeyEntry.SECOND;
import static witnessmark.ledger.verify.KeyEntry.THIRD;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.ledger.sqlite.RawReader;

/** Logs whose key was changed, honestly and otherwise, and what the verifier says. */
class ChangedKeyTest extends LedgerTest {
  private static final int AT = 30;

  private LedgerFile log(Shop shop, TestKey signer) throws Exception {
    Files.deleteIfExists(directory.resolve("ledger.db"));
    return LedgerFile.write(directory.resolve("ledger.db"), shop, signer);
  }

  private static List<String> found(LedgerFile log, TestKey key, Kept... kept) throws IOException {
    return report(log, key, kept).findings().stream().map(Finding::toString).toList();
  }

  private static Report report(LedgerFile log, TestKey key, Kept... kept) throws IOException {
    try (RawReader reader = RawReader.open(log.file())) {
      return Verifier.verify(new Loose(reader), key.verifierKey(), List.of(kept), n -> {});
    }
  }

  private static byte[] root(Shop shop, int size) {
    return ExportRoot.mth(shop.entries.subList(0, size).stream().map(Made::bytes).toList());
  }

  private static Shop once() {
    return Shop.of(AT).changed(FIRST, SECOND).more(5);
  }

  @Test
  void aLogWhoseKeyWasChangedVerifiesByTheOldKeyAndByTheNew() throws Exception {
    LedgerFile log = log(once(), SECOND);
    KeyStep step = new KeyStep(AT, hex(FIRST), hex(SECOND));
    for (TestKey key : List.of(FIRST, SECOND)) {
      Report report = report(log, key);
      assertThat(report.findings()).as(key.name()).isEmpty();
      assertThat(report.keySteps()).containsExactly(step);
    }
    assertThat(found(log, THIRD))
        .containsExactly(
            "checkpoint: the key with id "
                + hex(THIRD)
                + " is none of those that the log was signed with, the first of which has the id "
                + hex(FIRST)
                + ", the newest "
                + hex(SECOND));
  }

  private static String hex(TestKey key) {
    return HexFormat.of().formatHex(key.id());
  }

  @Test
  void theChangeMayBeTheLastEntryOrTheFirst() throws Exception {
    for (Shop shop :
        List.of(Shop.of(AT).changed(FIRST, SECOND), Shop.of(0).changed(FIRST, SECOND).more(3))) {
      LedgerFile log = log(shop, SECOND);
      assertThat(found(log, FIRST)).isEmpty();
      assertThat(found(log, SECOND)).isEmpty();
    }
  }

  @Test
  void aChainOfTwoChangesIsFollowedFromEveryKeyOfIt() throws Exception {
    LedgerFile log = log(once().changed(SECOND, THIRD).more(2), THIRD);
    for (TestKey key : List.of(FIRST, SECOND, THIRD)) {
      assertThat(found(log, key)).isEmpty();
      assertThat(report(log, key).keySteps()).hasSize(2);
    }
  }

  @Test
  void theOldKeySignsNothingBeyondItsSuccessor() throws Exception {
    assertThat(found(log(once(), FIRST), FIRST))
        .containsExactly(
            "checkpoint: is signed by the key with id "
                + hex(FIRST)
                + ", expected the key with id "
                + hex(SECOND));
  }

  @Test
  void aForgedVoucherIsNamed() throws Exception {
    // By the thief of the new key, who has not the old one.
    String forged =
        SECOND.voucher(THIRD, AT + 1).replace(tail(SECOND.voucher(THIRD, AT + 1)), "AAAA\n");
    for (String voucher :
        List.of(
            THIRD.voucher(SECOND, AT),
            SECOND.voucher(SECOND, AT),
            FIRST.voucher(THIRD, AT),
            FIRST.voucher(SECOND, AT + 1),
            FIRST.voucher(SECOND, AT - 1),
            FIRST.checkpoint(AT, root(Shop.of(AT), AT)),
            TestKey.first("witnessmark.local/log/other").voucher(SECOND, AT),
            FIRST.note("witnessmark.local/log-key-voucher@v1\n" + TestKey.ORIGIN + "\n"),
            forged,
            "")) {
      LedgerFile log = log(Shop.of(AT).changed(FIRST, SECOND, voucher).more(3), SECOND);
      assertThat(found(log, FIRST))
          .as(voucher)
          .anyMatch(f -> f.startsWith("entry 30: changes the log's key without its word: "))
          .anyMatch(f -> f.startsWith("checkpoint: is signed by the key with id " + hex(SECOND)));
      assertThat(found(log, SECOND)).as(voucher).isNotEmpty();
    }
  }

  private static String tail(String note) {
    return note.substring(note.length() - 5);
  }

  @Test
  void aVoucherByAThirdKeyLeadsNowhere() throws Exception {
    LedgerFile first = log(Shop.of(AT).changed(THIRD, SECOND).more(3), SECOND);
    assertThat(found(first, FIRST)).anyMatch(f -> f.contains("is none of those that the log was"));
    LedgerFile second = log(once().changed(THIRD, FIRST).more(3), SECOND);
    assertThat(found(second, FIRST))
        .containsExactly(
            "entry 36: changes the log's key without its word: vouches by the key with id "
                + hex(THIRD)
                + ", but the key with id "
                + hex(SECOND)
                + " signs since entry 30");
  }

  @Test
  void ofTwoVouchersOfOneKeyTheSecondCountsForNothing() throws Exception {
    Shop shop = once().changed(FIRST, THIRD).more(2);
    assertThat(found(log(shop, SECOND), FIRST))
        .containsExactly(
            "entry 36: changes the log's key without its word: vouches by the key with id "
                + hex(FIRST)
                + ", but the key with id "
                + hex(SECOND)
                + " signs since entry 30");
    assertThat(found(log(shop, THIRD), FIRST))
        .hasSize(2)
        .anyMatch(f -> f.startsWith("checkpoint: is signed by the key with id " + hex(THIRD)));
  }

  @Test
  void aKeyThatWasGivenUpDoesNotComeBack() throws Exception {
    assertThat(found(log(once().changed(SECOND, FIRST).more(1), FIRST), FIRST))
        .contains(
            "entry 36: changes the log's key without its word: vouches for the key with id "
                + hex(FIRST)
                + ", which signed before");
  }

  @Test
  void aCheckpointKeptBeforeTheChangeIsOpenedByTheKeyOfItsTime() throws Exception {
    Shop shop = once();
    LedgerFile log = log(shop, SECOND);
    Kept before = new Kept("old", FIRST.checkpoint(AT, root(shop, AT)));
    Kept after = new Kept("new", SECOND.checkpoint(AT + 1, root(shop, AT + 1)));
    for (TestKey key : List.of(FIRST, SECOND)) {
      assertThat(found(log, key, after, before)).isEmpty();
    }
    Kept late = new Kept("late", FIRST.checkpoint(AT + 1, root(shop, AT + 1)));
    Kept early = new Kept("early", SECOND.checkpoint(AT, root(shop, AT)));
    Kept other = new Kept("other", FIRST.checkpoint(20, root(shop, 19)));
    for (Kept wrong : List.of(late, early)) {
      assertThat(found(log, FIRST, wrong))
          .singleElement()
          .asString()
          .startsWith(wrong.name() + ": cannot be compared: is signed by the key with id ");
    }
    assertThat(found(log, SECOND, after, late, other, before))
        .singleElement()
        .asString()
        .startsWith("other: signs the root ")
        .endsWith("history was rewritten since; 3 more that sign as much or more stand after");
  }

  @Test
  void anyByteOfAVoucherChangedIsSeen() throws NoteException {
    byte[] entry =
        KeyEntry.of(FIRST, SECOND, FIRST.voucher(SECOND, AT)).getBytes(StandardCharsets.UTF_8);
    int from = new String(entry, StandardCharsets.UTF_8).indexOf("\"from\"");
    assertThat(Voucher.read(AT, entry).to().line()).isEqualTo(SECOND.verifierKey());
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    for (int round = 0; round < Integer.getInteger("laws.count", 3000); round++) {
      byte[] changed = entry.clone();
      int at = from + random.nextInt(entry.length - from);
      changed[at] ^= (byte) (1 + random.nextInt(255));
      boolean refused;
      try {
        Voucher read = Voucher.read(AT, changed);
        refused =
            !read.from().line().equals(FIRST.verifierKey())
                || !read.to().line().equals(SECOND.verifierKey());
      } catch (NoteException e) {
        refused = true;
      }
      assertThat(refused).as("seed %d, byte %d of %s", seed, at, Arrays.toString(changed)).isTrue();
    }
  }
}
