package witnessmark.cli;

import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.certificate.CertificateCheck;
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
      "Exit status 1 when nothing is proved, or the pages are not what the entries make."
    },
    footer = {"", "Example:  witnessmark ledger check-proof entry-8.tlog-proof --key shop.pub"})
final class CheckProofCommand implements Callable<Integer> {
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
    byte[] proof = pdf ? ProofSource.attached(file, bytes) : bytes;
    ProofResult result = pdf ? ProofCheck.bundle(proof, verifier) : ProofCheck.of(proof, verifier);
    Optional<CertificateCheck> pages =
        pdf && result instanceof ProofResult.Included included
            ? Optional.of(CertificateProof.of(bytes, proof, included))
            : Optional.empty();
    if (json.wanted()) {
      Map<String, Object> object = CheckedProof.json(result);
      pages.ifPresent(p -> object.put("certificate", CertificateProof.json(p)));
      json.print(spec.commandLine().getOut(), object);
    } else {
      Page page = new Page(spec.commandLine().getOut());
      CheckedProof.print(page, result, entries);
      pages.ifPresent(p -> CertificateProof.print(page, p));
    }
    boolean holds = pages.map(CertificateCheck::holds).orElse(true);
    return CheckedProof.holds(result) && holds ? Exit.YES : Exit.NO;
  }
}
