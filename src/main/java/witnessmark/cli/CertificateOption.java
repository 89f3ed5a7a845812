package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import witnessmark.certificate.Certificate;
import witnessmark.certificate.Paper;
import witnessmark.certificate.Parties;
import witnessmark.certificate.Proved;
import witnessmark.cli.answer.FoundWarning;
import witnessmark.desk.Declined;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.Reading;
import witnessmark.record.Gather;
import witnessmark.record.JobRecord;
import witnessmark.record.UnitRecord;

/** The {@code --certificate} option and those that go with it: a unit's record as a PDF. */
final class CertificateOption {
  @Option(
      names = "--certificate",
      paramLabel = "FILE.pdf",
      description =
          "Write the unit's record as a PDF with its proof inside, which a customer can check "
              + "with: witnessmark ledger check-proof FILE.pdf --key shop.pub")
  private Path file;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      defaultValue = "A4",
      description = "A4 (default) or letter, with --certificate.")
  private String paper;

  @Option(
      names = "--issuer",
      paramLabel = "TEXT",
      description = "With --certificate: who issues it, named as not part of the record.")
  private String issuer;

  @Option(
      names = "--for",
      paramLabel = "TEXT",
      description = "With --certificate: for whom it is, named as not part of the record.")
  private String addressee;

  @Option(
      names = "--draft",
      description = "With --certificate: also of a job that has not ended, and marked so.")
  private boolean draft;

  @Mixin private ForceOption force = new ForceOption();

  boolean wanted() {
    return file != null;
  }

  /** The paper that was named. */
  private Paper size() {
    for (Paper known : Paper.values()) {
      if (known.name().equals(paper.toUpperCase(Locale.ROOT))) {
        return known;
      }
    }
    throw new IllegalArgumentException("unknown paper \"" + paper + "\"; allowed are A4, letter");
  }

  private Parties parties() {
    return new Parties(Optional.ofNullable(issuer), Optional.ofNullable(addressee));
  }

  /**
   * @throws IllegalArgumentException when the options do not go together
   */
  void check() {
    size();
    parties();
    if (!wanted() && (draft || force.given() || issuer != null || addressee != null)) {
      throw new IllegalArgumentException(
          "--draft, --issuer, --for and --force go with --certificate FILE.pdf");
    }
  }

  /**
   * Writes the certificate.
   *
   * @return the exit status
   */
  int write(
      PrintWriter out,
      PrintWriter err,
      DataOption data,
      Optional<String> unit,
      Optional<String> job) {
    force.check(file);
    Optional<Proved> proved = data.reading(r -> r.atOneMoment(() -> proved(r, unit, job)));
    if (proved.isEmpty()) {
      err.println("No job on record matches.");
      return Exit.NO;
    }
    UnitRecord record = UnitRecord.ofBytes(proved.get().entries(), proved.get().origin());
    FalselySigned.refuse("certificate", proved.get().origin(), proved.get().entries());
    if (!draft) {
      refuseUnended(record);
    }
    force.write(file, Certificate.render(proved.get(), size(), Version.program(), parties()));
    out.println(
        "Wrote "
            + file
            + ": unit "
            + record.unit()
            + ", "
            + record.jobs().size()
            + (record.jobs().size() == 1 ? " job, " : " jobs, ")
            + proved.get().entries().size()
            + " entries with their proof.");
    out.flush();
    FoundWarning.print(err, record);
    return Exit.YES;
  }

  private static Optional<Proved> proved(
      Reading reading, Optional<String> unit, Optional<String> job) {
    SortedMap<Long, byte[]> entries = Gather.of(reading, unit, job);
    return entries.isEmpty()
        ? Optional.empty()
        : Optional.of(Proved.of(entries, Bundle.of(reading, new ArrayList<>(entries.keySet()))));
  }

  private static void refuseUnended(UnitRecord record) {
    for (JobRecord job : record.jobs()) {
      if (!job.outcome().ended()) {
        throw new Declined(
            "Job "
                + job.job()
                + " is "
                + job.outcome().code()
                + ": a certificate is of jobs that have ended. Close or abandon it, name another with"
                + " --job, or use --draft.");
      }
    }
  }
}
