package witnessmark.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.ledger.verify.ProofCheck;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.VerifierKey;

/** Checks a proof that somebody handed over. */
@Command(
    name = "check-proof",
    mixinStandardHelpOptions = true,
    description = {
      "Check a proof of any kind with a verifier key alone; no log and no data directory is needed.",
      "Exit status 1 when nothing is proved."
    },
    footer = {"", "Example:  witnessmark ledger check-proof entry-8.tlog-proof --key shop.pub"})
final class CheckProofCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "What ledger prove wrote.")
  private Path file;

  @Option(
      names = "--key",
      required = true,
      paramLabel = "FILE",
      description = "The log's verifier key, from a copy that you trust.")
  private Path key;

  @Option(
      names = "--entries",
      description = "Print the proved entries too, one JSON object a line: the number, the entry.")
  private boolean entries;

  @Mixin private JsonOption json;

  @Override
  public Integer call() {
    VerifierKey verifier = VerifierKey.parse(KeyFile.given(key));
    ProofResult result = ProofCheck.of(ProofSource.read(file), verifier);
    if (json.wanted()) {
      json.print(spec.commandLine().getOut(), CheckedProof.json(result));
    } else {
      CheckedProof.print(new Page(spec.commandLine().getOut()), result, entries);
    }
    return result instanceof ProofResult.Refused ? Exit.NO : Exit.YES;
  }
}
