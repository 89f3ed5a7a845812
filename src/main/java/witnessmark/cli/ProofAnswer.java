package witnessmark.cli;

import java.util.Map;
import java.util.Optional;
import witnessmark.certificate.CertificateCheck;
import witnessmark.cli.answer.CheckedProof;
import witnessmark.cli.answer.Json;
import witnessmark.cli.answer.Page;
import witnessmark.cli.answer.ProofVerdict;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.record.Tally;

/** The answer of a check of a proof: its verdict first, what it rests on after. */
record ProofAnswer(ProofVerdict verdict, ProofResult result, Optional<CertificateCheck> pages) {
  static ProofAnswer of(ProofResult result, Optional<CertificateCheck> pages) {
    return new ProofAnswer(ProofVerdict.of(result, pages), result, pages);
  }

  int status() {
    return verdict.holds() ? Exit.YES : Exit.NO;
  }

  Map<String, Object> json() {
    Map<String, Object> object = CheckedProof.json(result);
    object.put("verdict", verdict.kind().code());
    if (!verdict.jobs().isEmpty()) {
      object.put("jobs", verdict.jobs().stream().map(ProofAnswer::json).toList());
    }
    pages.ifPresent(p -> object.put("certificate", CertificateProof.json(p)));
    return object;
  }

  private static Map<String, Object> json(Tally job) {
    return Json.object(
        "job",
        job.job(),
        "ended",
        job.ended(),
        "belong",
        job.belong().isPresent() ? job.belong().getAsLong() : null,
        "here",
        job.here(),
        "whole",
        job.belong().isPresent() ? job.whole() : null);
  }

  void print(Page page, boolean entries) {
    switch (verdict.kind()) {
      case NOT_AS_RECORDED -> {
        page.say("NOT AS RECORDED: the pages differ from what the proved entries make.");
        pages.ifPresent(p -> CertificateProof.differences(page, p));
        lacking(page, "  ");
      }
      case FALSELY_SIGNED -> {
        page.say("FALSELY SIGNED: a decision is not signed by the key of the person it names.");
        CheckedProof.wrong(result).forEach(w -> page.say(w, 2));
      }
      case ENTRIES_MISSING -> {
        lacking(page, "");
        if (verdict.jobs().stream().noneMatch(Tally::lacking)) {
          page.say("ENTRIES ARE MISSING: keys that decisions are signed with are not here.", 2);
        }
      }
      case NOT_SHOWN_IN_FULL -> pages.ifPresent(p -> p.faults().forEach(f -> page.say(f, 2)));
      case NOTHING, PROVED -> {
        // the result says so itself
      }
    }
    CheckedProof.print(page, result, verdict.holds() ? "Proved: " : "What is proved: ");
    if (entries) {
      CheckedProof.entries(page, result);
    }
    switch (verdict.kind()) {
      case PROVED -> {
        pages.ifPresent(p -> CertificateProof.shown(page, p));
        if (pages.isEmpty()) {
          verdict.jobs().forEach(j -> page.say(told(j), 2));
        }
      }
      case NOT_AS_RECORDED ->
          page.say(
              "Do not rely on the pages. Ask for the file as it was written; --entries prints what is"
                  + " proved.");
      case ENTRIES_MISSING ->
          page.say(
              "What is left out may be a reading, a nonconformity or a decision. Ask for all entries:"
                  + " trace --certificate, or ledger prove --job.");
      case NOTHING, FALSELY_SIGNED, NOT_SHOWN_IN_FULL -> {
        // said above
      }
    }
  }

  private void lacking(Page page, String indent) {
    verdict.jobs().stream()
        .filter(Tally::lacking)
        .forEach(
            j ->
                page.say(
                    indent
                        + "ENTRIES ARE MISSING: "
                        + j.belong().getAsLong()
                        + " entries belong to job "
                        + j.job()
                        + " up to its end, "
                        + j.here()
                        + (j.here() == 1 ? " is here." : " are here."),
                    indent.length() + 2));
  }

  private static String told(Tally job) {
    String name = "Job " + job.job() + ": ";
    if (job.whole()) {
      return name + "all " + job.here() + " entries up to its end are here, scans aside.";
    }
    return name
        + (job.ended()
            ? "its end does not say how many entries it has: that none was left out is not shown."
            : "its end is not here: that none of its entries was left out is not shown.");
  }
}
