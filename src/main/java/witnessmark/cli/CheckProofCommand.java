package witnessmark.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.certificate.CertificateFile;
import witnessmark.cli.answer.Page;
import witnessmark.ledger.verify.ProofCheck;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.VerifierKey;

/** Checks a proof that somebody handed over. */
@Command(
    name = "check-proof",
    mixinStandardHelpOptions = true,
    description = {
      "Check a proof of any kind with a verifier key alone, without the log.",
      "Of a certificate (PDF) the pages are made again from the proved entries and compared, too.",
      "Exit status 1 when nothing is proved, a decision is not signed by the person it names, the",
      "pages are not what the entries make, or a job's end is among several entries and not all",
      "that belong to the job are, or the keys of its decisions."
    },
    footer = {"", "Example:  witnessmark ledger check-proof entry-8.tlog-proof --key shop.pub"})
final class CheckProofCommand implements Callable<Integer> {
  private static final String STRANGE =
      "this PDF is not a certificate as it was written. Another program saved, printed, signed or"
          + " stamped it since, or it never was one. Ask the shop for the original file, and do not"
          + " save it anew";

  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE", description = "What ledger prove or trace --certificate wrote.")
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
    byte[] bytes = ProofSource.read(file);
    boolean pdf = ProofSource.isPdf(bytes);
    ProofAnswer answer =
        pdf
            ? certificate(bytes, verifier)
            : ProofAnswer.of(ProofCheck.of(bytes, verifier), Optional.empty());
    if (json.wanted()) {
      json.print(spec.commandLine().getOut(), answer.json());
    } else {
      answer.print(new Page(spec.commandLine().getOut()), entries);
    }
    return answer.status();
  }

  private static ProofAnswer certificate(byte[] pdf, VerifierKey verifier) {
    byte[] proof;
    try {
      proof = CertificateFile.read(pdf).bundle();
    } catch (IllegalArgumentException e) {
      return ProofAnswer.of(
          new ProofResult.Refused(List.of(STRANGE, "found: " + e.getCause().getMessage())),
          Optional.empty());
    }
    ProofResult result = ProofCheck.bundle(proof, verifier);
    return ProofAnswer.of(
        result,
        result instanceof ProofResult.Included included
            ? Optional.of(CertificateProof.of(pdf, proof, included))
            : Optional.empty());
  }
}
