package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Good proofs changed at random: none proves anything that is not so. */
class ProofFuzzTest {
  private static final int COUNT = Integer.getInteger("fuzz.count", 20_000);

  private static final String[] WORDS = {
    "{",
    "}",
    "[",
    "]",
    "\"",
    ",",
    ":",
    "\\u0000",
    "\n",
    "\n\n",
    "null",
    "1e3",
    "-0",
    "extra ",
    "index 7\n",
    "\"v\":1",
    "\"entries\"",
    "\"path\":[]",
    "\"checkpoint\"",
    "=",
    "==",
    "A",
    "AAAA",
    "\u2014 ",
    "\uD83D\uDE00",
    "18446744073709551616",
    "[[[[[[[[",
    "c2sp.org/tlog-proof@v1\n"
  };

  @Test
  void noChangeOfAProofProvesWhatIsNotSo() {
    List<byte[]> good = new ArrayList<>();
    for (String proof :
        List.of(
            MadeProofs.bundle(23, 7),
            MadeProofs.bundle(23, 0, 1, 2, 21, 22),
            MadeProofs.tlogProof(7, 23),
            MadeProofs.tlogProof(0, 1),
            MadeProofs.growth(9, 23),
            MadeProofs.growth(8, 16))) {
      good.add(MadeProofs.bytes(proof));
    }
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    int still = 0;
    for (int round = 0; round < COUNT; round++) {
      byte[] from = good.get(random.nextInt(good.size()));
      byte[] changed = changed(from, good.get(random.nextInt(good.size())), random);
      String what = "seed " + seed + ", round " + round;
      ProofResult result = ProofCheck.of(changed, MadeProofs.VERIFIER);
      if (result instanceof ProofResult.Refused refused) {
        assertThat(refused.faults()).as(what).isNotEmpty().noneMatch(String::isBlank);
      } else {
        still++;
        assertSo(what, result);
      }
    }
    // white space in JSON, for one, changes nothing
    assertThat(still).as("seed %d", seed).isBetween(1, COUNT / 4);
  }

  private static void assertSo(String what, ProofResult result) {
    if (result instanceof ProofResult.Included included) {
      assertSigned(what, included.checkpoint());
      assertThat(included.entries()).as(what).isNotEmpty();
      for (ProofResult.Entry entry : included.entries()) {
        assertThat(entry.n()).as(what).isLessThan(included.checkpoint().size());
        assertThat(entry.bytes()).as(what).isEqualTo(MadeProofs.LEAVES.get((int) entry.n()));
      }
    } else {
      ProofResult.GoesOn growth = (ProofResult.GoesOn) result;
      assertSigned(what, growth.earlier());
      assertSigned(what, growth.later());
      assertThat(growth.earlier().size()).as(what).isLessThanOrEqualTo(growth.later().size());
    }
  }

  private static void assertSigned(String what, Checkpoint checkpoint) {
    assertThat(checkpoint.origin()).as(what).isEqualTo(TestKey.ORIGIN);
    assertThat(checkpoint.root())
        .as(what)
        .isEqualTo(ExportRoot.mth(MadeProofs.LEAVES.subList(0, (int) checkpoint.size())));
  }

  /** One to three changes: a byte, a piece out, a piece again, a word in, an end cut, a splice. */
  private static byte[] changed(byte[] from, byte[] other, Random random) {
    byte[] bytes = from;
    for (int changes = 1 + random.nextInt(3); changes > 0; changes--) {
      int at = random.nextInt(bytes.length + 1);
      int to = Math.min(bytes.length, at + random.nextInt(1 + random.nextInt(60)));
      bytes =
          switch (random.nextInt(7)) {
            case 0 ->
                joined(
                    bytes,
                    at,
                    new byte[] {(byte) random.nextInt(256)},
                    Math.min(at + 1, bytes.length));
            case 1 -> joined(bytes, at, new byte[0], to);
            case 2 -> joined(bytes, to, Arrays.copyOfRange(bytes, at, to), to);
            case 3 -> joined(bytes, at, MadeProofs.bytes(WORDS[random.nextInt(WORDS.length)]), at);
            case 4 -> Arrays.copyOf(bytes, at);
            case 5 ->
                joined(
                    bytes,
                    at,
                    Arrays.copyOfRange(other, Math.min(at, other.length), other.length),
                    bytes.length);
            default -> joined(bytes, at, new byte[] {' '}, at);
          };
    }
    return bytes;
  }

  /** {@code bytes} with {@code put} in place of those from {@code at} to {@code on}. */
  private static byte[] joined(byte[] bytes, int at, byte[] put, int on) {
    byte[] all = new byte[at + put.length + bytes.length - on];
    System.arraycopy(bytes, 0, all, 0, at);
    System.arraycopy(put, 0, all, at, put.length);
    System.arraycopy(bytes, on, all, at + put.length, bytes.length - on);
    return all;
  }
}
