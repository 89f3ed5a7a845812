package witnessmark.cli.answer;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import witnessmark.ledger.verify.Checkpoint;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.ProofResult.Entry;
import witnessmark.ledger.verify.SignedDecisions;

/** What a proof proved, for people and for programs. */
public final class CheckedProof {
  private CheckedProof() {}

  /**
   * @param lead before what is proved: the verdict where it is a good one
   */
  public static void print(Page page, ProofResult result, String lead) {
    if (result instanceof ProofResult.Included included) {
      Checkpoint checkpoint = included.checkpoint();
      page.say(
          lead
              + numbered(included.entries())
              + " of the log "
              + checkpoint.origin()
              + ", byte for byte as recorded.");
      page.line("Its checkpoint signs " + tree(checkpoint) + ".");
      SignedDecisions decisions = decisions(included);
      decisions.signed().forEach(page::say);
      decisions.unknown().forEach(page::say);
      included.keys().forEach(k -> page.say(KeySteps.sentence(k)));
    } else if (result instanceof ProofResult.GoesOn growth) {
      page.say(
          "Proved: the log "
              + growth.later().origin()
              + " goes on from its earlier checkpoint; the first "
              + growth.earlier().size()
              + " entries are the same.");
      page.line("The earlier checkpoint signs " + tree(growth.earlier()) + ".");
      page.line("The later checkpoint signs " + tree(growth.later()) + ".");
      growth.keys().forEach(k -> page.say(KeySteps.sentence(k)));
    } else if (result instanceof ProofResult.Refused refused) {
      page.line("NOTHING IS PROVED:");
      refused.faults().forEach(f -> page.say("  " + f + ".", 2));
    } else {
      throw new IllegalStateException("no words for " + result);
    }
  }

  /** The proved entries, a line each. */
  public static void entries(Page page, ProofResult result) {
    if (result instanceof ProofResult.Included included) {
      included.entries().forEach(e -> page.line(line(e)));
    }
  }

  public static Map<String, Object> json(ProofResult result) {
    if (result instanceof ProofResult.Included included) {
      return Json.object(
          "proved",
          "entries",
          "log",
          included.checkpoint().origin(),
          "checkpoint",
          object(included.checkpoint()),
          "keys",
          KeySteps.json(included.keys()),
          "entries",
          included.entries().stream()
              .map(e -> Json.object("entry", e.n(), "leaf", base64(e.bytes())))
              .toList(),
          "signed",
          decisions(included).signed(),
          "unknown",
          decisions(included).unknown(),
          "wrong",
          decisions(included).wrong());
    } else if (result instanceof ProofResult.GoesOn growth) {
      return Json.object(
          "proved",
          "goes-on",
          "log",
          growth.later().origin(),
          "old",
          object(growth.earlier()),
          "new",
          object(growth.later()),
          "keys",
          KeySteps.json(growth.keys()));
    } else if (result instanceof ProofResult.Refused refused) {
      return Json.object("proved", "nothing", "faults", refused.faults());
    }
    throw new IllegalStateException("no words for " + result);
  }

  /** Whether the result proves something, and nothing in it is signed falsely. */
  public static boolean holds(ProofResult result) {
    if (result instanceof ProofResult.Included included) {
      return decisions(included).wrong().isEmpty();
    }
    return !(result instanceof ProofResult.Refused);
  }

  /** What is signed falsely, as sentences. */
  public static List<String> wrong(ProofResult result) {
    return result instanceof ProofResult.Included included
        ? decisions(included).wrong()
        : List.of();
  }

  /** What is signed with keys whose entries are not among these, as sentences. */
  public static List<String> unknown(ProofResult result) {
    return result instanceof ProofResult.Included included
        ? decisions(included).unknown()
        : List.of();
  }

  private static SignedDecisions decisions(ProofResult.Included included) {
    return SignedDecisions.of(included.checkpoint().origin(), included.entries());
  }

  private static Map<String, Object> object(Checkpoint checkpoint) {
    return Json.object("size", checkpoint.size(), "root", base64(checkpoint.root()));
  }

  private static String tree(Checkpoint checkpoint) {
    return Counted.entries(checkpoint.size()) + " with the root " + base64(checkpoint.root());
  }

  private static String base64(byte[] bytes) {
    return Base64.getEncoder().encodeToString(bytes);
  }

  private static String line(Entry entry) {
    String text = new String(entry.bytes(), StandardCharsets.UTF_8).replaceAll("\\p{Cntrl}", "?");
    return "{\"n\":" + entry.n() + ",\"entry\":" + text + "}";
  }

  /** {@code 4 entries (5 to 7, 9)}. */
  private static String numbered(List<Entry> entries) {
    if (entries.size() == 1) {
      return "entry " + entries.get(0).n();
    }
    StringJoiner runs = new StringJoiner(", ");
    for (int i = 0; i < entries.size(); ) {
      int end = i;
      while (end + 1 < entries.size() && entries.get(end + 1).n() == entries.get(end).n() + 1) {
        end++;
      }
      long from = entries.get(i).n();
      long to = entries.get(end).n();
      runs.add(from == to ? "" + from : from + (to == from + 1 ? ", " : " to ") + to);
      i = end + 1;
    }
    return entries.size() + " entries (" + runs + ")";
  }
}
