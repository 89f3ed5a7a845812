package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static witnessmark.ledger.verify.MadeProofs.VERIFIER;
import static witnessmark.ledger.verify.MadeProofs.bundle;
import static witnessmark.ledger.verify.MadeProofs.bytes;
import static witnessmark.ledger.verify.MadeProofs.growth;
import static witnessmark.ledger.verify.MadeProofs.item;
import static witnessmark.ledger.verify.MadeProofs.note;
import static witnessmark.ledger.verify.MadeProofs.text;
import static witnessmark.ledger.verify.MadeProofs.tlogProof;

import java.util.List;
import org.junit.jupiter.api.Test;

class ProofCheckTest {
  private static final String NONE =
      "expected a proof bundle (\"v\", \"checkpoint\", \"entries\") or a consistency proof"
          + " (\"v\", \"old\", \"new\", \"path\"), found neither";

  private static ProofResult of(String proof) {
    return ProofCheck.of(bytes(proof), VERIFIER);
  }

  private static void refused(String proof, String... faults) {
    assertThat(of(proof)).as(proof).isEqualTo(new ProofResult.Refused(List.of(faults)));
  }

  @Test
  void aBundleProvesItsEntries() {
    ProofResult.Included proved = (ProofResult.Included) of(bundle(23, 0, 7, 22));
    assertThat(proved.checkpoint().origin()).isEqualTo(TestKey.ORIGIN);
    assertThat(proved.checkpoint().size()).isEqualTo(23);
    assertThat(proved.entries().stream().map(ProofResult.Entry::n)).containsExactly(0L, 7L, 22L);
    assertThat(proved.entries().get(1).bytes()).isEqualTo(MadeProofs.LEAVES.get(7));
  }

  @Test
  void spaceAndOrderInTheJsonMeanNothing() {
    String loose = bundle(23, 7).replace(",\"", " ,\n\t\"").replace(":[", " : [ ") + " \n";
    assertThat(of(loose)).isInstanceOf(ProofResult.Included.class);
    String turned =
        "{\"entries\":[" + item(7, 23) + "],\"checkpoint\":" + text(note(23)) + ",\"v\":1}";
    assertThat(of(turned)).isInstanceOf(ProofResult.Included.class);
  }

  @Test
  void aTlogProofProvesItsEntry() {
    ProofResult.Included proved = (ProofResult.Included) of(tlogProof(7, 23));
    assertThat(proved.checkpoint().size()).isEqualTo(23);
    assertThat(proved.entries()).hasSize(1);
    assertThat(proved.entries().get(0).n()).isEqualTo(7);
    assertThat(proved.entries().get(0).bytes()).isEqualTo(MadeProofs.LEAVES.get(7));
    assertThat(of(tlogProof(0, 1))).isInstanceOf(ProofResult.Included.class);
  }

  @Test
  void aConsistencyProofProvesThatTheLogGoesOn() {
    ProofResult.GoesOn proved = (ProofResult.GoesOn) of(growth(9, 23));
    assertThat(proved.earlier().size()).isEqualTo(9);
    assertThat(proved.later().size()).isEqualTo(23);
    assertThat(of(growth(9, 9))).isInstanceOf(ProofResult.GoesOn.class);
  }

  @Test
  void whatIsNoJsonObjectIsRefused() {
    refused("", "expected an object in the file, found nothing");
    refused("[]", "expected an object in the file, found an array");
    refused(
        "{\"v\":1",
        "expected JSON, found: Unexpected end-of-input: expected close marker for Object (start marker at [Source: REDACTED (`StreamReadFeature.INCLUDE_SOURCE_IN_LOCATION` disabled); line: 1, column: 1])");
    refused(
        bundle(23, 7) + "x",
        "expected JSON, found: Unrecognized token 'x': was expecting (JSON String, Number, Array, Object or token 'null', 'true' or 'false')");
    refused(bundle(23, 7) + "{}", "expected one JSON object, found more after it");
    refused("{}", "expected \"v\" to be 1");
    refused("{\"v\":2}", "expected \"v\" to be 1");
    refused("{\"v\":1}", NONE);
    refused("{\"v\":1,\"v\":1}", "expected JSON, found: Duplicate field 'v'");
    refused("{\"v\":1,\"w\":2}", "found a field \"w\" that no proof has");
    refused("{\"v\":\"1\"}", "expected an integer in \"v\", found a text");
  }

  @Test
  void aBundleOfAnotherFormIsRefused() {
    String checkpoint = "{\"v\":1,\"checkpoint\":" + text(note(23)) + ",\"entries\":";
    refused(checkpoint + "[]}", "it holds no entry, so it proves nothing");
    refused(checkpoint + "{}}", "expected an array in \"entries\", found an object");
    refused(
        checkpoint + "[7]}", "expected an object in element 0 of \"entries\", found an integer");
    refused(
        checkpoint + "[{\"entry\":7}]}",
        "expected \"entry\", \"leaf\" and \"path\" in element 0 of \"entries\"");
    for (String twice : List.of("7, 7", "8, 7")) {
      String[] n = twice.split(", ");
      refused(
          bundle(23, Integer.parseInt(n[0]), Integer.parseInt(n[1])),
          "expected entries by number, each once; " + n[1] + " stands after " + n[0]);
    }
    String good = bundle(23, 7);
    refused(
        good.replace("\"entries\":", "\"path\":[],\"entries\":"),
        "expected a proof bundle: \"v\", \"checkpoint\", \"entries\" and perhaps \"vouchers\", nothing else");
    refused(
        good.replace("\"leaf\"", "\"leaf\":\"\",\"leaf\""),
        "expected JSON, found: Duplicate field 'leaf'");
    refused(
        good.replace("\"leaf\"", "\"extra\":1,\"leaf\""),
        "found a field \"extra\" that no proof has");
    for (String number :
        List.of("07", "-7", "7.0", "7e0", "9223372036854775808", "99999999999999999999")) {
      assertThat(of(good.replace("\"entry\":7", "\"entry\":" + number)))
          .as(number)
          .isInstanceOf(ProofResult.Refused.class);
    }
    refused(
        good.replace("\"entry\":7", "\"entry\":9223372036854775808"),
        "expected a number in decimal without leading zeros in \"entry\", found \"9223372036854775808\"");
  }

  @Test
  void base64ThatIsNotTheOneTextOfItsBytesIsRefused() {
    String good = bundle(23, 7);
    // the last digit before = has four unused bits, which the JDK alone would let pass
    String hash = MadeProofs.base64(ExportRoot.mth(MadeProofs.LEAVES.subList(6, 7)));
    assertThat(good).contains(hash);
    char last = hash.charAt(42);
    String loose = hash.substring(0, 42) + (char) (last + 1) + "=";
    for (String bad : List.of(loose, hash.replace("=", ""), hash + "\\n", "%%%", " " + hash)) {
      ProofResult.Refused refused = (ProofResult.Refused) of(good.replace(hash, bad));
      assertThat(refused.faults()).as(bad).hasSize(1);
      assertThat(refused.faults().get(0)).startsWith("expected base64 in \"path\", found \"");
    }
    refused(good.replace(hash, hash.substring(0, 40)), "entry 7: a hash has 30 bytes, expected 32");
    refused(good.replace(hash, ""), "entry 7: a hash has 0 bytes, expected 32");
  }

  @Test
  void everyEntryThatIsNotProvedIsNamed() {
    String bent = bundle(23, 3, 7, 22).replace(item(7, 23), item(7, 22));
    refused(bent, "entry 7: its bytes and path do not lead to the signed root");
    refused(
        bundle(23, 3).replace("\"entry\":3", "\"entry\":23"),
        "entry 23: its number 23 is not among the 23 entries that the checkpoint signs");
    String all = bundle(23, java.util.stream.IntStream.range(0, 23).toArray());
    ProofResult.Refused none =
        (ProofResult.Refused) of(all.replace(text(note(23)), text(note(22))));
    assertThat(none.faults()).hasSize(21).last().isEqualTo("3 more entries are not proved");
  }

  @Test
  void anotherKeyOriginOrSignatureIsRefused() {
    TestKey other = TestKey.second(TestKey.ORIGIN);
    ProofResult wrong = ProofCheck.of(bytes(bundle(23, 7)), VerifierKey.parse(other.verifierKey()));
    assertThat(((ProofResult.Refused) wrong).faults().get(0))
        .startsWith("the checkpoint: is signed by the key with id ");
    TestKey elsewhere = TestKey.first("witnessmark.local/log/ffffffffffffffff");
    ProofResult origin =
        ProofCheck.of(bytes(tlogProof(7, 23)), VerifierKey.parse(elsewhere.verifierKey()));
    assertThat(origin)
        .isEqualTo(
            new ProofResult.Refused(
                List.of(
                    "the checkpoint: its origin is \"witnessmark.local/log/0123456789abcdef\","
                        + " expected \"witnessmark.local/log/ffffffffffffffff\"")));
    String unsigned = note(23).replace("\n23\n", "\n24\n");
    ProofResult.Refused changed =
        (ProofResult.Refused) of(bundle(23, 7).replace(text(note(23)), text(unsigned)));
    assertThat(changed.faults().get(0)).startsWith("the checkpoint: its signature is not the one");
    ProofResult.Refused old =
        (ProofResult.Refused) of(growth(9, 23).replace(text(note(9)), text(unsigned)));
    assertThat(old.faults().get(0)).startsWith("the earlier checkpoint: its signature");
  }

  @Test
  void aTlogProofOfAnotherFormIsRefused() {
    String good = tlogProof(7, 23);
    refused("c2sp", "expected a blank line between the proof and its checkpoint");
    refused(
        good.replace("@v1", "@v2"),
        "expected the first line \"c2sp.org/tlog-proof@v1\", found \"c2sp.org/tlog-proof@v2\"");
    refused(
        good.replaceFirst("extra .*\n", ""),
        "it has no line extra with the entry's bytes, without which nothing can be proved");
    refused(
        good.replaceFirst("index 7\n", ""), "expected a line \"index\" with the entry's number");
    refused(
        good.replace("index 7", "index 07"),
        "expected a number in decimal without leading zeros in the line index, found \"07\"");
    refused(
        good.replace("index 7", "index 8"),
        "entry 8: its bytes and path do not lead to the signed root");
    refused(
        good.replace("\n", "\r\n"), "expected a blank line between the proof and its checkpoint");
    refused(
        good.replace("extra ", "extra  "),
        "expected base64 in the line extra, found \" "
            + MadeProofs.base64(MadeProofs.LEAVES.get(7))
            + "\"");
    refused(
        good + "\n",
        "the checkpoint: expected exactly one signature line, ended by a line end, after the blank line");
    assertThat(of(good.replace("index 7\n", "index 7\n" + "AAAA\n".repeat(64))))
        .isInstanceOf(ProofResult.Refused.class);
    assertThat(ProofCheck.of(new byte[] {'c', (byte) 0xff}, VERIFIER))
        .isEqualTo(new ProofResult.Refused(List.of("expected text in UTF-8, found other bytes")));
  }

  @Test
  void aConsistencyProofThatShowsNothingIsRefused() {
    refused(growth(9, 23).replace(text(note(9)), text(note(8))), "the path is too long");
    refused(growth(9, 23).replaceAll("\"path\":.*", "\"path\":[]}"), "the path is empty");
    TestKey key = MadeProofs.KEY;
    String otherNine = key.checkpoint(9, new byte[32]);
    refused(
        growth(9, 23).replace(text(note(9)), text(otherNine)),
        "the path does not lead to the root of the earlier checkpoint");
    refused(
        growth(9, 9)
            .replaceFirst("\"old\":\"[^\"]*\"", "\"old\":" + text(otherNine).replace("\\", "\\\\")),
        "both sign 9 entries, but not the same ones");
    String none = key.checkpoint(0, Sha.of());
    refused(
        growth(9, 23).replace(text(note(9)), text(none)),
        "the earlier checkpoint signs no entry: every log goes on from it, so nothing is proved");
    refused(
        "{\"v\":1,\"old\":" + text(note(23)) + ",\"new\":" + text(note(9)) + ",\"path\":[]}",
        "the earlier checkpoint signs 23 entries, the later one only 9: exchange them, or history"
            + " was rewritten");
  }

  @Test
  void whatAStrangerWroteCannotFloodOrSteerAScreen() {
    String origin = "\\u001b[2J" + "x".repeat(5000);
    ProofResult.Refused refused =
        (ProofResult.Refused) of(bundle(23, 7).replace(text(note(23)), '"' + origin + "\\n1\\n\""));
    assertThat(refused.faults().get(0)).startsWith("the checkpoint: its origin is \"?[2Jxxx");
    assertThat(refused.faults().get(0)).hasSize(401);
  }

  @Test
  void aProofLargerThanTheLimitIsRefusedUnread() {
    assertThat(ProofCheck.of(new byte[ProofCheck.LARGEST + 1], VERIFIER))
        .isEqualTo(new ProofResult.Refused(List.of("the proof is larger than 33554432 bytes")));
  }
}
