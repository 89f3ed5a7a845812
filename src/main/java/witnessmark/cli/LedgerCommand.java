package witnessmark.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.Counted;
import witnessmark.cli.answer.KeySteps;
import witnessmark.desk.Declined;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;
import witnessmark.ledger.LedgerException;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;
import witnessmark.ledger.sqlite.RawReader;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.ledger.verify.Report;
import witnessmark.ledger.verify.Verifier;
import witnessmark.pipeline.Journal;

/** The log itself. */
@Command(
    name = "ledger",
    mixinStandardHelpOptions = true,
    description = "Begin, verify and export the log, and prove what is in it.",
    subcommands = {
      ProveCommand.class,
      CheckProofCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      RotateKeyCommand.class
    },
    footer = {"", "Example:  witnessmark ledger verify"})
final class LedgerCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "create",
      mixinStandardHelpOptions = true,
      description = "Begin a new log with its own key in an empty or new data directory.",
      footer = {"", "Example:  witnessmark ledger create --data /var/lib/witnessmark"})
  int create(@Mixin DataOption data) {
    try (SqliteLedger ledger = SqliteLedger.create(data.files())) {
      new Journal(ledger).note(new Entry.LogOpened(Moments.now(), ledger.origin()));
    }
    out("Began a log in " + data.files().directory() + ".");
    out("Keep a copy of its verifier key elsewhere, to prove later that this is the log:");
    out("  " + Files.text(data.files().verifier()).strip());
    return Exit.YES;
  }

  @Command(
      name = "verify",
      mixinStandardHelpOptions = true,
      description = {
        "Recompute everything from the entries' bytes: links, tree, checkpoint, derived tables.",
        "Exit status 1 when the log does not verify; every finding names its entry."
      },
      footer = {
        "",
        "Example:  witnessmark ledger verify --key shop.pub --since checkpoint-2026-11-25.txt"
      })
  int verify(
      @Option(
              names = "--key",
              paramLabel = "FILE",
              description =
                  "A verifier key kept elsewhere, also one from before the log's key was changed"
                      + " (default: the data directory's own).")
          Path key,
      @Option(
              names = "--since",
              paramLabel = "FILE",
              description =
                  "A checkpoint kept elsewhere, or a directory of them: tell whether the log goes on "
                      + "from all of them.")
          Path since,
      @Mixin DataOption data) {
    LedgerFiles files = data.files();
    files.mustExist();
    String verifier = key == null ? KeyFile.own(files) : KeyFile.given(key);
    KeptFiles kept = KeptFiles.read(since, verifier);
    Report report;
    try (RawReader raw = RawReader.open(files.database());
        Progress progress = new Progress("verifying", size(data))) {
      report = Verifier.verify(raw, verifier, kept.notes(), progress);
    } catch (IOException e) {
      throw new Refusal(Exit.SURROUNDINGS, e.getMessage());
    }
    report.findings().forEach(f -> out(f.toString()));
    if (report.unlisted() > 0) {
      out("… and " + report.unlisted() + " more.");
    }
    String root = Base64.getEncoder().encodeToString(report.root());
    if (report.verifies()) {
      out("Verified: " + Counted.entries(report.size()) + ", root " + root + ".");
      report.keySteps().forEach(k -> out(KeySteps.sentence(k)));
      if (!kept.notes().isEmpty()) {
        out(kept.agree());
      }
      kept.leftOut().ifPresent(this::out);
      return Exit.YES;
    }
    kept.leftOut().ifPresent(this::out);
    out("DOES NOT VERIFY: " + Counted.entries(report.size()) + ", root " + root + ".");
    return Exit.NO;
  }

  /** For the progress bar only: a file too damaged to tell is the verifier's to report. */
  private static long size(DataOption data) {
    try {
      return data.reading(Reading::size);
    } catch (LedgerException e) {
      return 0;
    }
  }

  @Command(
      name = "checkpoint",
      mixinStandardHelpOptions = true,
      description = {
        "Print the newest signed checkpoint: the log's size and root.",
        "Keep it elsewhere: it reveals whether history was rewritten later."
      },
      footer = {"", "Example:  witnessmark ledger checkpoint > checkpoint-2026-11-25.txt"})
  int checkpoint(@Mixin DataOption data) {
    spec.commandLine()
        .getOut()
        .print(
            data.reading(Reading::checkpoint)
                .orElseThrow(() -> new Declined("The log has no entry yet.")));
    spec.commandLine().getOut().flush();
    return Exit.YES;
  }

  @Command(
      name = "export",
      mixinStandardHelpOptions = true,
      description = {
        "Print every entry's exact bytes in base64, one JSON object a line:",
        "{\"entry\":5,\"leaf\":\"BASE64\"}"
      },
      footer = {"", "Example:  witnessmark ledger export --jsonl > ledger.jsonl"})
  int export(
      @Option(names = "--jsonl", required = true, description = "The form; there is only this one.")
          boolean jsonl,
      @Mixin DataOption data) {
    PrintWriter out = spec.commandLine().getOut();
    data.reading(
        reading -> {
          Progress progress = new Progress("exporting", reading.size());
          long next = 0;
          List<Stored> chunk = reading.from(next, 1000);
          while (!chunk.isEmpty()) {
            for (Stored s : chunk) {
              out.print("{\"entry\":" + s.n() + ",\"leaf\":\"");
              out.print(Base64.getEncoder().encodeToString(s.bytes()));
              out.print("\"}\n");
              next = s.n() + 1;
            }
            progress.accept(next);
            chunk = reading.from(next, 1000);
          }
          progress.close();
          return null;
        });
    out.flush();
    return Exit.YES;
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
