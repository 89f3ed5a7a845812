package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The signatures of persons in proved entries, as far as the keys are among these.
 *
 * @param signed a sentence for each that is right
 * @param unknown a sentence for each whose key is not there
 * @param wrong a sentence for each that is wrong
 */
public record SignedDecisions(List<String> signed, List<String> unknown, List<String> wrong) {
  public SignedDecisions {
    signed = List.copyOf(signed);
    unknown = List.copyOf(unknown);
    wrong = List.copyOf(wrong);
  }

  /**
   * Checks them. That a key was in force is not shown by some entries alone, but by all of the log.
   *
   * @param origin the log's own name
   */
  public static SignedDecisions of(String origin, List<ProofResult.Entry> entries) {
    EntryReader reader = new EntryReader();
    Map<Long, DecisionFields> all = new HashMap<>();
    for (ProofResult.Entry e : entries) {
      if (reader.read(e.bytes(), new EntryFields()) == null) {
        all.put(e.n(), DecisionFields.of(e.bytes()));
      }
    }
    List<String> signed = new ArrayList<>();
    List<String> unknown = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (ProofResult.Entry e : entries) {
      DecisionFields fields = all.get(e.n());
      if (fields == null || !fields.signed()) {
        continue;
      }
      String by = fields.text("by").replaceAll("\\p{Cntrl}", "?");
      String which = "Entry " + e.n() + ", by " + by + ": ";
      DecisionFields key = all.get(fields.key());
      if (key == null || !key.text("kind").equals("operator-key-enrolled")) {
        unknown.add(
            which + "signed; the key of entry " + fields.key() + " is not among these entries.");
        continue;
      }
      String fault =
          key.text("operator").equals(fields.text("by"))
              ? PersonSignature.fault(
                  origin, e.n(), e.bytes(), fields.text("signature"), key.text("publicKey"))
              : "the key of entry " + fields.key() + " is another badge's";
      if (fault == null) {
        signed.add(which + "signed with the person's key, of entry " + fields.key() + ".");
      } else {
        wrong.add(which + "NOT SIGNED BY THAT PERSON: " + fault + ".");
      }
    }
    return new SignedDecisions(signed, unknown, wrong);
  }
}
