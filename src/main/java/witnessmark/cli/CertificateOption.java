package witnessmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Locale;
import java.util.Optional;
import java.util.SortedMap;
import picocli.CommandLine.Option;
import witnessmark.certificate.Certificate;
import witnessmark.certificate.Paper;
import witnessmark.certificate.Proved;
import witnessmark.desk.Declined;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.Reading;
import witnessmark.record.Gather;
import witnessmark.record.JobRecord;
import witnessmark.record.UnitRecord;

/** The {@code --certificate} option and those that go with it: a unit's record as a PDF. */
final class CertificateOption {
  @Option(
      names = "--certificate",
      paramLabel = "FILE.pdf",
      description = {
        "Write the unit's record as a PDF with its proof inside, which a customer can check",
        "with: witnessmark ledger check-proof FILE.pdf --key shop.pub"
      })
  private Path file;

  @Option(
      names = "--paper",
      paramLabel = "SIZE",
      defaultValue = "A4",
      description = "A4 (default) or letter, with --certificate.")
  private String paper;

  @Option(
      names = "--draft",
      description = "With --certificate: also of a job that has not ended, and marked so.")
  private boolean draft;

  @Option(names = "--force", description = "With --certificate: replace the file where it exists.")
  private boolean force;

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

  /**
   * @throws IllegalArgumentException when the options do not go together
   */
  void check() {
    size();
    if (!wanted() && (draft || force)) {
      throw new IllegalArgumentException("--draft and --force go with --certificate FILE.pdf");
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
    if (!force && java.nio.file.Files.exists(file)) {
      throw exists();
    }
    Optional<Proved> proved = data.reading(r -> proved(r, unit, job));
    if (proved.isEmpty()) {
      err.println("No job on record matches.");
      return Exit.NO;
    }
    UnitRecord record = UnitRecord.of(Gather.read(proved.get().entries()));
    if (!draft) {
      refuseUnended(record);
    }
    save(Certificate.render(proved.get(), size(), Version.program()));
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

  private void save(byte[] pdf) {
    try {
      if (force) {
        Files.write(file, pdf);
      } else {
        Files.writeNew(file, pdf);
      }
    } catch (FileAlreadyExistsException e) {
      throw exists();
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          file + " cannot be written: " + FileFault.why(e) + "; name another file.");
    }
  }

  private Refusal exists() {
    return new Refusal(
        Exit.SURROUNDINGS, file + " exists already; name a new file, or replace it with --force.");
  }
}
