package witnessmark.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.record.JobRecord;
import witnessmark.record.UnitRecord;
import witnessmark.report.Phrases;
import witnessmark.report.Remarks;

/**
 * What a certificate shows once its proof holds: that its pages are those that the proved entries
 * make, and that none of a job's entries is left out.
 *
 * @param sameness how far the file is what its entries make
 * @param shown what is shown, a sentence each
 * @param cautions what its reader must know beside, a sentence each: wrenches found out of
 *     tolerance later
 * @param faults what is not as it should be, a sentence each; none is a yes
 */
public record CertificateCheck(
    Sameness sameness, List<String> shown, List<String> cautions, List<String> faults) {
  public CertificateCheck {
    shown = List.copyOf(shown);
    cautions = List.copyOf(cautions);
    faults = List.copyOf(faults);
  }

  /** Whether the certificate stands, as far as the comparison of {@link #sameness} goes. */
  public boolean holds() {
    return faults.isEmpty();
  }

  /**
   * Checks a file whose attached proof was found to hold.
   *
   * @param proved what it proves
   * @param program this program, as it would name itself in a certificate
   */
  public static CertificateCheck of(byte[] pdf, Proved proved, String program) {
    List<String> shown = new ArrayList<>();
    List<String> faults = new ArrayList<>();
    UnitRecord unit;
    Sameness sameness;
    try {
      unit = UnitRecord.ofBytes(proved.entries(), proved.origin());
      sameness = Sameness.of(pdf, proved, program);
    } catch (IllegalArgumentException e) {
      return new CertificateCheck(
          new Sameness(Sameness.Kind.DIFFERENT, List.of()),
          List.of(),
          List.of(),
          List.of("No pages can be made of its entries: " + e.getMessage() + "."));
    }
    CertificateFile said = CertificateFile.read(pdf);
    String by = said.program();
    switch (sameness.kind()) {
      case BYTES ->
          shown.add("The pages are what the entries make: the file is the same to the byte.");
      case CONTENT ->
          shown.add(
              "The pages are what the entries make: every object of the file is the same; only its"
                  + " compression differs.");
      case TEXT ->
          faults.add(
              "NOT SHOWN IN FULL: the text of the pages is what the entries make, but nothing else was"
                  + " compared, since "
                  + by
                  + " wrote the file and "
                  + program
                  + " draws it otherwise. Check it with that version.");
      case DIFFERENT -> {
        faults.add(
            "THE PAGES ARE NOT WHAT THE ENTRIES MAKE"
                + (by.equals(program)
                    ? "."
                    : " (" + by + " wrote them, this is " + program + ")."));
        sameness.differences().forEach(d -> faults.add("  " + d));
      }
    }
    for (JobRecord job : unit.jobs()) {
      Optional<Boolean> whole = job.whole();
      String sentence = "Job " + job.job() + ": " + Phrases.wholeness(job);
      (whole.isPresent() && !whole.get() ? faults : shown).add(sentence);
    }
    said.parties().told().ifPresent(shown::add);
    return new CertificateCheck(sameness, shown, cautions(unit), faults);
  }

  private static List<String> cautions(UnitRecord unit) {
    return unit.jobs().stream()
        .flatMap(
            j -> j.foundLater().stream().map(f -> "Job " + j.job() + ": " + Remarks.caution(f)))
        .toList();
  }
}
