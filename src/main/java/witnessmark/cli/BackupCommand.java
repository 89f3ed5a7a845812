package witnessmark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Base64;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.backup.Backup;
import witnessmark.backup.CannotException;
import witnessmark.cli.answer.Counted;
import witnessmark.cli.answer.Page;
import witnessmark.entry.Moments;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.verify.Report;

/** Copies the log while the daemon works. */
@Command(
    name = "backup",
    mixinStandardHelpOptions = true,
    description = {
      "Copy the log as it is at this moment to a new directory, and verify the copy. The daemon",
      "may run meanwhile. The private key is left out unless --with-key is given.",
      "Exit status 1 when the log does not verify; nothing is left behind then."
    },
    footer = {
      "",
      "Example:  witnessmark ledger backup /mnt/backup/witnessmark-monday",
      "          witnessmark ledger backup /mnt/backup   (a new directory in it, by date)"
    })
final class BackupCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(
      paramLabel = "DIR",
      description = "A directory that does not exist yet, or one in which to make it.")
  private Path named;

  @Option(
      names = "--with-key",
      description =
          "Copy the private key, too, readable by its owner only. Without it a restored log can be "
              + "read and proved, but not continued; whoever gets hold of it can sign a false history.")
  private boolean withKey;

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description =
          "A verifier key kept elsewhere, to verify by (default: the data directory's own).")
  private Path key;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    LedgerFiles log = data.files();
    log.mustExist();
    String verifier = key == null ? KeyFile.own(log) : KeyFile.given(key);
    try (Progress copying = new Progress("copying (percent)", 100);
        Progress verifying = new Progress("verifying", data.reading(Reading::size))) {
      Path target = Backup.place(named, log, Moments.now());
      Report report =
          new Backup(log, verifier, withKey).make(target, copying, verifying.after(copying));
      tell(target, report);
      return Exit.YES;
    } catch (CannotException e) {
      throw refusal(e);
    } catch (IOException e) {
      throw new Refusal(
          Exit.SURROUNDINGS,
          "No backup was made in " + named + ": " + FileFault.beside(named, e) + ".");
    }
  }

  static Refusal refusal(CannotException e) {
    return new Refusal(e.damaged() ? Exit.NO : Exit.SURROUNDINGS, e.getMessage());
  }

  private void tell(Path target, Report report) {
    Page page = new Page(spec.commandLine().getOut());
    page.line("Backed up and verified: " + Counted.entries(report.size()) + " in " + target + ".");
    page.line(
        "Its checkpoint signs the root " + Base64.getEncoder().encodeToString(report.root()) + ".");
    page.say(
        withKey
            ? "The private key is in it: keep it as safe as the log's own, for whoever has it can"
                + " sign a false history."
            : "The private key is not in it: keep a copy of ledger.key in a safe place, or a"
                + " restored log can be read but not continued.");
  }
}
