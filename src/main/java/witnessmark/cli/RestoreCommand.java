package witnessmark.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.backup.CannotException;
import witnessmark.backup.Restore;
import witnessmark.cli.answer.Counted;
import witnessmark.cli.answer.Page;
import witnessmark.desk.Declined;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.FileFault;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.Reading;
import witnessmark.ledger.verify.Kept;

/** Puts a backup in the place of a lost log. */
@Command(
    name = "restore",
    mixinStandardHelpOptions = true,
    description = {
      "Verify a backup and put it into a data directory that has no log. What was recorded after",
      "the backup is not in it; --since tells whether others have seen more.",
      "Exit status 1 when the backup does not verify or is older than a kept checkpoint."
    },
    footer = {
      "",
      "Example:  witnessmark ledger restore /mnt/backup/witnessmark-monday --since checkpoints/"
    })
final class RestoreCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "BACKUP", description = "The directory that ledger backup made.")
  private Path backup;

  @Option(
      names = "--since",
      paramLabel = "CHECKPOINT",
      description =
          "A checkpoint kept elsewhere, or a directory of them: restore only where the backup goes"
              + " as far as all of them and agrees with them.")
  private Path since;

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description = "A verifier key kept elsewhere (default: the one in the backup).")
  private Path key;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    LedgerFiles from = new LedgerFiles(backup);
    if (!from.exist()) {
      throw new Refusal(
          Exit.INPUT, backup + " has no ledger.db; name a directory that ledger backup made.");
    }
    String verifier = key == null ? KeyFile.own(from) : KeyFile.given(key);
    KeptFiles kept = KeptFiles.read(since, verifier);
    AtomicLong size = new AtomicLong();
    try (Progress copying = new Progress("copying (percent)", 100);
        Progress verifying = new Progress("verifying", size::get)) {
      Restore.Restored restored =
          new Restore(from, data.files(), verifier)
              .make(entries -> compared(kept, entries, size), copying, verifying.after(copying));
      tell(restored, kept);
      return Exit.YES;
    } catch (CannotException e) {
      throw BackupCommand.refusal(e);
    } catch (IOException e) {
      Path into = data.files().directory();
      throw new Refusal(
          Exit.SURROUNDINGS,
          "Nothing was restored into " + into + ": " + FileFault.beside(into, e) + ".");
    }
  }

  private static List<Kept> compared(KeptFiles kept, long entries, AtomicLong size) {
    size.set(entries);
    if (kept.most() > entries) {
      throw new Declined(
          "This backup is older than what others have seen: it has "
              + Counted.entries(entries)
              + ", a kept checkpoint signs "
              + kept.most()
              + ". Nothing was restored.\nLook for a newer backup. If there is none, restore without"
              + " --since and tell those who hold such checkpoints: verify --since fails by them"
              + " from then on.");
    }
    return kept.notes();
  }

  private void tell(Restore.Restored restored, KeptFiles kept) {
    Page page = new Page(spec.commandLine().getOut());
    long size = restored.report().size();
    page.line(
        "Verified and restored: "
            + Counted.entries(size)
            + " in "
            + data.files().directory()
            + ".");
    page.say(
        "Its newest entry was taken at "
            + newest(size)
            + ". What was recorded after this backup is NOT in it.");
    page.say(
        kept.notes().isEmpty()
            ? "Whether others have seen more than this was not asked; --since compares with"
                + " checkpoints that they kept."
            : kept.agree());
    kept.leftOut().ifPresent(page::say);
    page.say(
        restored.continued()
            ? "The key that signs it is in place: the daemon can go on. Whoever holds a checkpoint"
                + " of something later will find that history was rewritten."
            : "Its private key is not there: the log can be read, verified and proved, but nothing"
                + " can be added to it. To go on, put ledger.key from where it is kept beside it.");
  }

  private String newest(long size) {
    return data.reading(
        (Reading reading) ->
            Moments.text(EntryJson.read(reading.entry(size - 1).orElseThrow().bytes()).at()));
  }
}
