package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Function;
import witnessmark.fuzz.Target;

/** What somebody hands over to be checked: keys, checkpoints, proofs. */
public final class ProofTargets {
  private static final List<String> WORDS =
      List.of(
          "\\u0000",
          "null",
          "\"v\":1",
          "\"entries\"",
          "\"path\":[]",
          "\"checkpoint\"",
          "\"old\"",
          "\"new\"",
          "\"leaf\"",
          "\"entry\"",
          "extra ",
          "index ",
          "index 7\n",
          "=",
          "==",
          "AAAA",
          "\u2014 ",
          "18446744073709551616",
          "[[[[[[[[",
          "c2sp.org/tlog-proof@v1\n",
          TestKey.ORIGIN,
          "+",
          "\n\n");

  private ProofTargets() {}

  public static List<Target<?>> all() {
    return List.of(
        new Plain<>(
            "verifier keys",
            800,
            keys(),
            2_000,
            bytes -> VerifierKey.parse(new String(bytes, StandardCharsets.UTF_8)),
            key -> "taken"),
        new Signed(),
        proof("proofs of one entry", 330, MadeProofs.tlogProof(7, 23), MadeProofs.tlogProof(0, 1)),
        proof(
            "bundles of entries",
            330,
            MadeProofs.bundle(23, 7),
            MadeProofs.bundle(23, 0, 1, 2, 21, 22)),
        proof("consistency proofs", 330, MadeProofs.growth(9, 23), MadeProofs.growth(8, 16)));
  }

  private static List<String> keys() {
    return List.of(
        MadeProofs.KEY.verifierKey(), TestKey.second("witnessmark.local/log/1").verifierKey());
  }

  private static Target<?> proof(String name, int share, String... good) {
    return new Plain<>(
        name,
        share,
        List.of(good),
        4_000,
        bytes -> ProofCheck.of(bytes, MadeProofs.VERIFIER),
        ProofTargets::result);
  }

  private static String result(ProofResult result) {
    if (result instanceof ProofResult.Refused refused) {
      if (refused.faults().isEmpty() || refused.faults().stream().anyMatch(String::isBlank)) {
        throw new AssertionError("refused without a reason");
      }
      return "refused " + refused.faults();
    }
    if (result instanceof ProofResult.Included included) {
      signed(included.checkpoint());
      for (ProofResult.Entry entry : included.entries()) {
        boolean within = entry.n() >= 0 && entry.n() < included.checkpoint().size();
        if (!within || !Arrays.equals(entry.bytes(), MadeProofs.LEAVES.get((int) entry.n()))) {
          throw new AssertionError("proves an entry that is not so");
        }
      }
      return "taken " + included.entries().size();
    }
    ProofResult.GoesOn growth = (ProofResult.GoesOn) result;
    signed(growth.earlier());
    signed(growth.later());
    if (growth.earlier().size() > growth.later().size()) {
      throw new AssertionError("proves that a log shrank");
    }
    return "taken";
  }

  private static void signed(Checkpoint checkpoint) {
    int size = (int) checkpoint.size();
    boolean so =
        checkpoint.origin().equals(TestKey.ORIGIN)
            && size <= MadeProofs.LEAVES.size()
            && Arrays.equals(checkpoint.root(), ExportRoot.mth(MadeProofs.LEAVES.subList(0, size)));
    if (!so) {
      throw new AssertionError("a checkpoint that was never signed");
    }
  }

  /** What a reader answers, or the sentence by which it refuses. */
  record Told<T>(T answer, String refusal) {}

  private record Plain<T>(
      String name,
      int share,
      List<String> texts,
      int each,
      Function<byte[], T> reader,
      Function<T, String> judge)
      implements Target<Told<T>> {
    @Override
    public List<byte[]> samples() {
      return texts.stream().map(t -> t.getBytes(StandardCharsets.UTF_8)).toList();
    }

    @Override
    public List<String> words() {
      return WORDS;
    }

    @Override
    public Allowance allowance() {
      return new Allowance(512 << 10, each);
    }

    @Override
    public Told<T> parse(byte[] input) {
      try {
        return new Told<>(reader.apply(input), null);
      } catch (IllegalArgumentException e) {
        return new Told<>(null, String.valueOf(e.getMessage()));
      }
    }

    @Override
    public String judge(byte[] input, Told<T> told) {
      return told.answer() == null ? "refused " + told.refusal() : judge.apply(told.answer());
    }
  }

  /** Checkpoints: half of the inputs have their changed text signed anew, by the key itself. */
  private static final class Signed implements Target<Told<Checkpoint>> {
    @Override
    public String name() {
      return "checkpoints";
    }

    @Override
    public int share() {
      return 450;
    }

    @Override
    public List<byte[]> samples() {
      return List.of(MadeProofs.bytes(MadeProofs.note(23)), MadeProofs.bytes(MadeProofs.note(0)));
    }

    @Override
    public List<String> words() {
      return WORDS;
    }

    @Override
    public Allowance allowance() {
      return new Allowance(512 << 10, 2_000);
    }

    @Override
    public byte[] own(byte[] input, Random random) {
      if (random.nextInt(8) != 0) {
        return input;
      }
      String text = TestKey.ORIGIN + "\n" + random.nextInt(1000) + "\n";
      byte[] root = new byte[random.nextInt(4) == 0 ? random.nextInt(40) : 32];
      random.nextBytes(root);
      text += java.util.Base64.getEncoder().encodeToString(root) + "\n";
      String[] spoils = {"", "", " ", "0", "\n", "extension line\n"};
      String spoil = spoils[random.nextInt(spoils.length)];
      int at = random.nextInt(text.length() + 1);
      return MadeProofs.bytes(
          MadeProofs.KEY.note(text.substring(0, at) + spoil + text.substring(at)));
    }

    @Override
    public Told<Checkpoint> parse(byte[] input) {
      try {
        String note = new String(input, StandardCharsets.UTF_8);
        return new Told<>(Checkpoint.open(note, MadeProofs.VERIFIER), null);
      } catch (NoteException e) {
        return new Told<>(null, e.getMessage());
      }
    }

    @Override
    public String judge(byte[] input, Told<Checkpoint> told) {
      if (told.answer() == null) {
        return "refused " + told.refusal();
      }
      Checkpoint c = told.answer();
      String text = c.origin() + "\n" + c.size() + "\n" + MadeProofs.base64(c.root()) + "\n";
      if (!Arrays.equals(MadeProofs.bytes(MadeProofs.KEY.note(text)), input)) {
        throw new AssertionError("another note than the key makes over what it says");
      }
      return "taken";
    }
  }
}
