package witnessmark.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import witnessmark.certificate.CertificateCheck;
import witnessmark.certificate.Proved;
import witnessmark.cli.answer.Json;
import witnessmark.cli.answer.Page;
import witnessmark.ledger.verify.ProofResult;

/** What a certificate shows beyond its proof. */
final class CertificateProof {
  private CertificateProof() {}

  /** Checks the pages against the proved entries. */
  static CertificateCheck of(byte[] pdf, byte[] bundle, ProofResult.Included included) {
    SortedMap<Long, byte[]> entries = new TreeMap<>();
    included.entries().forEach(e -> entries.put(e.n(), e.bytes()));
    return CertificateCheck.of(pdf, Proved.of(entries, bundle), Version.program());
  }

  static Map<String, Object> json(CertificateCheck check) {
    return Json.object(
        "compared",
        check.sameness().kind().name().toLowerCase(Locale.ROOT),
        "holds",
        check.holds(),
        "shown",
        check.shown(),
        "cautions",
        check.cautions(),
        "faults",
        check.faults());
  }

  /** What differs, below the verdict that something does. */
  static void differences(Page page, CertificateCheck check) {
    List<String> differences = check.sameness().differences();
    (differences.isEmpty() ? check.faults() : differences).forEach(d -> page.say("  " + d, 4));
  }

  static void shown(Page page, CertificateCheck check) {
    check.shown().forEach(s -> page.say(s, 2));
    check.cautions().forEach(c -> page.say("Caution: " + c, 2));
  }
}
