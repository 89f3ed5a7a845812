package witnessmark.ledger.verify;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The signatures of persons in proved entries, as far as the keys are among these.
 *
 * @param signed a sentence for each that is right
 * @param unknown a sentence for each whose key is not there
 * @param wrong a sentence for each that is wrong, or lacks where these entries show that it must be
 */
public record SignedDecisions(List<String> signed, List<String> unknown, List<String> wrong) {
  public SignedDecisions {
    signed = List.copyOf(signed);
    unknown = List.copyOf(unknown);
    wrong = List.copyOf(wrong);
  }

  /**
   * Checks them. That no other key was in force is not shown by some entries alone, but by all of
   * the log.
   *
   * @param origin the log's own name
   */
  public static SignedDecisions of(String origin, List<ProofResult.Entry> entries) {
    Check check = new Check(origin);
    EntryReader reader = new EntryReader();
    for (ProofResult.Entry e : entries) {
      if (reader.read(e.bytes(), new EntryFields()) == null) {
        check.all.put(e.n(), DecisionFields.of(e.bytes()));
      }
    }
    entries.stream().filter(e -> check.all.containsKey(e.n())).forEach(check::entry);
    return new SignedDecisions(check.signed, check.unknown, check.wrong);
  }

  /** What the entries up to one say of keys in force and of roles. */
  private static final class Check {
    private final String origin;
    private final Map<Long, DecisionFields> all = new HashMap<>();
    private final Map<String, Long> keys = new TreeMap<>();
    private final Map<String, Boolean> quality = new HashMap<>();
    private final List<String> signed = new ArrayList<>();
    private final List<String> unknown = new ArrayList<>();
    private final List<String> wrong = new ArrayList<>();

    Check(String origin) {
      this.origin = origin;
    }

    void entry(ProofResult.Entry e) {
      DecisionFields fields = all.get(e.n());
      String kind = fields.text("kind");
      String which = "Entry " + e.n() + ", by " + printable(fields.text("by")) + ": ";
      if (fields.signed()) {
        signed(e, fields, which);
      } else if (DecisionCheck.concerns(kind) && DecisionCheck.decided(kind, fields)) {
        unsigned(e.n(), kind, fields, which);
      }
      fold(e.n(), kind, fields);
    }

    private void signed(ProofResult.Entry e, DecisionFields fields, String which) {
      long named = fields.key();
      if (named >= 0 && named <= e.n() && !all.containsKey(named)) {
        unknown.add(which + "signed; the key of entry " + named + " is not among these entries.");
        return;
      }
      String fault = fault(e, fields);
      if (fault == null) {
        signed.add(which + "signed with the person's key, of entry " + named + ".");
      } else {
        wrong.add(which + "NOT SIGNED BY THAT PERSON: " + fault + ".");
      }
    }

    private String fault(ProofResult.Entry e, DecisionFields fields) {
      DecisionFields key = all.get(fields.key());
      String the = "entry " + fields.key();
      if (key == null || fields.key() > e.n() || !enrols(key)) {
        return the + " enrols no key";
      }
      String by = fields.text("by");
      if (!key.text("operator").equals(by)) {
        return "the key of " + the + " is another badge's";
      }
      long inForce = keys.getOrDefault(by, fields.key() == e.n() ? e.n() : -1);
      if (inForce != fields.key()) {
        return "the key of " + the + " was no longer in force";
      }
      return PersonSignature.fault(
          origin, e.n(), e.bytes(), fields.text("signature"), key.text("publicKey"));
    }

    private void unsigned(long n, String kind, DecisionFields fields, String which) {
      Long held = keys.get(fields.text("by"));
      if (held == null && enrols(fields) && fields.text("by").equals(fields.text("operator"))) {
        held = n;
      }
      if (held != null) {
        wrong.add(which + "NOT SIGNED, though the key of entry " + held + " was in force.");
        return;
      }
      boolean must = !kind.startsWith("operator-") && DecisionCheck.heavy(kind, fields);
      keys.keySet().stream()
          .filter(b -> must && quality.getOrDefault(b, false))
          .findFirst()
          .ifPresent(
              b ->
                  wrong.add(
                      which
                          + "NOT SIGNED by anybody's key, though "
                          + printable(b)
                          + " of quality held that of entry "
                          + keys.get(b)
                          + "."));
    }

    private void fold(long n, String kind, DecisionFields fields) {
      String concerned = fields.text("operator");
      switch (kind) {
        case "operator-enrolled" -> quality.put(concerned, fields.quality());
        case "operator-key-enrolled" -> keys.put(concerned, n);
        case "operator-key-withdrawn" -> keys.remove(concerned);
        default -> {
          // says nothing about keys
        }
      }
    }

    private static boolean enrols(DecisionFields fields) {
      return fields.text("kind").equals("operator-key-enrolled");
    }

    private static String printable(String badge) {
      return badge.replaceAll("\\p{Cntrl}", "?");
    }
  }
}
