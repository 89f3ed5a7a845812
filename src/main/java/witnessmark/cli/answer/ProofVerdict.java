package witnessmark.cli.answer;

import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.certificate.CertificateCheck;
import witnessmark.certificate.Sameness;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.record.Tally;

/**
 * What the check of a proof came to in one word, the most serious first.
 *
 * @param kind the word
 * @param jobs how many of their jobs' entries are among several proved ones
 */
public record ProofVerdict(Kind kind, List<Tally> jobs) {
  /** The words. */
  public enum Kind {
    NOTHING("nothing"),
    FALSELY_SIGNED("falsely-signed"),
    NOT_AS_RECORDED("not-as-recorded"),
    ENTRIES_MISSING("entries-missing"),
    NOT_SHOWN_IN_FULL("not-shown-in-full"),
    PROVED("proved");

    private final String code;

    Kind(String code) {
      this.code = code;
    }

    public String code() {
      return code;
    }
  }

  public static ProofVerdict of(ProofResult result, Optional<CertificateCheck> pages) {
    List<Tally> jobs = jobs(result);
    return new ProofVerdict(kind(result, pages, jobs), jobs);
  }

  public boolean holds() {
    return kind == Kind.PROVED;
  }

  private static Kind kind(ProofResult result, Optional<CertificateCheck> pages, List<Tally> jobs) {
    if (result instanceof ProofResult.Refused) {
      return Kind.NOTHING;
    }
    if (!CheckedProof.holds(result)) {
      return Kind.FALSELY_SIGNED;
    }
    Optional<Sameness.Kind> sameness = pages.map(p -> p.sameness().kind());
    if (sameness.equals(Optional.of(Sameness.Kind.DIFFERENT))) {
      return Kind.NOT_AS_RECORDED;
    }
    // A job's whole record carries the keys of its people.
    boolean keysLack =
        jobs.stream().anyMatch(Tally::ended) && !CheckedProof.unknown(result).isEmpty();
    if (keysLack || jobs.stream().anyMatch(Tally::lacking)) {
      return Kind.ENTRIES_MISSING;
    }
    return pages.map(CertificateCheck::holds).orElse(true) ? Kind.PROVED : Kind.NOT_SHOWN_IN_FULL;
  }

  /** A single entry claims to be nothing but that; entries of a later form tell nothing here. */
  private static List<Tally> jobs(ProofResult result) {
    if (!(result instanceof ProofResult.Included included) || included.entries().size() == 1) {
      return List.of();
    }
    SortedMap<Long, Entry> entries = new TreeMap<>();
    for (ProofResult.Entry entry : included.entries()) {
      try {
        entries.put(entry.n(), EntryJson.read(entry.bytes()));
      } catch (IllegalArgumentException e) {
        // proved all the same, and of no job that could be counted
        continue;
      }
    }
    return Tally.of(entries);
  }
}
