package witnessmark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.entry.Moments;
import witnessmark.ledger.KeyChange;
import witnessmark.ledger.LogKey;
import witnessmark.ledger.sqlite.SqliteLedger;
import witnessmark.pipeline.Journal;

/** Gives the log another key, which the present one vouches for. */
@Command(
    name = "rotate-key",
    mixinStandardHelpOptions = true,
    description = {
      "Give the log a new key. The present key vouches for it in an entry of the log, so whoever",
      "holds the old verifier key can still check everything. The daemon may run meanwhile.",
      "The old private key is destroyed unless --keep-old names a file for it: from backups made",
      "before, no log can be gone on with then. Make a new one at once."
    },
    footer = {"", "Example:  witnessmark ledger rotate-key --data /var/lib/witnessmark"})
final class RotateKeyCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--keep-old",
      paramLabel = "FILE",
      description =
          "Keep the old private key in a new file that its owner alone may read. Whoever has it can "
              + "sign another history up to here, so keep it only where the new one would be safe, too.")
  private Path keepOld;

  @Mixin private DataOption data;

  @Override
  public Integer call() {
    try (KeyChange change = KeyChange.begin(data.files());
        SqliteLedger ledger = SqliteLedger.open(data.files())) {
      Journal journal = new Journal(ledger);
      LogKey next = change.next(ledger.key());
      if (keepOld != null) {
        change.keepOld(keepOld);
      }
      long n = journal.handOver(next, Moments.now());
      // A crash before the next line leaves the new pair beside the old; the log says which signs.
      change.install(next);
      out("The log's key was changed at entry " + n + "; the new one signs from there on.");
      out("Keep a copy of its verifier key elsewhere, beside the old one, which checks all, too:");
      out("  " + next.verifierLine());
      out(
          keepOld == null
              ? "The old private key was overwritten. Destroy the copies of it in backups as well."
              : "The old private key is in " + keepOld + ".");
      out(
          "Backups made before need the old private key to be gone on from. Make a new one now:"
              + " witnessmark ledger backup");
    }
    return Exit.YES;
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
