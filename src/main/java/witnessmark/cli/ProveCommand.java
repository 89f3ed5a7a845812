package witnessmark.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.desk.Declined;
import witnessmark.ledger.Bundle;
import witnessmark.ledger.Growth;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.RewrittenException;
import witnessmark.ledger.TlogProof;
import witnessmark.ledger.verify.ProofCheck;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.VerifierKey;
import witnessmark.record.Gather;

/** Writes proofs that others can check without the log. */
@Command(
    name = "prove",
    mixinStandardHelpOptions = true,
    description = {
      "Write a proof that entries are in the log, or that it goes on from an",
      "earlier checkpoint. Anybody can check it with the verifier key alone.",
      "One entry makes a C2SP tlog-proof file, several a bundle in JSON.",
      "Exit status 1 when there is no such entry, or history was rewritten; 4 when a decision",
      "among the entries is not signed by the person it names."
    },
    footer = {
      "",
      "Example:  witnessmark ledger prove 8 --out entry-8.tlog-proof",
      "          witnessmark ledger prove --unit ATR-26-0147 --out proof.json",
      "          witnessmark ledger prove --since checkpoint.txt --out growth.json"
    })
final class ProveCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @ArgGroup(multiplicity = "1")
  private What what;

  @Option(names = "--out", required = true, paramLabel = "FILE", description = "Where to write it.")
  private Path file;

  @Option(
      names = "--key",
      paramLabel = "FILE",
      description = "A verifier key kept elsewhere (default: the data directory's own).")
  private Path key;

  @Option(
      names = "--bundle",
      description =
          "Make a bundle of one entry, too: it checks with the keys that signed before the log's"
              + " key was changed.")
  private boolean bundle;

  @Mixin private ForceOption force;
  @Mixin private DataOption data;

  /** What to prove; one of these. */
  static final class What {
    @Parameters(paramLabel = "ENTRY", arity = "1..*", description = "Numbers of entries.")
    private List<Long> entries;

    @Option(
        names = "--job",
        description = "All entries of a job, with those of its people and wrenches.")
    private String job;

    @Option(names = "--unit", description = "The same of all jobs on a unit.")
    private String unit;

    @Option(
        names = "--since",
        paramLabel = "CHECKPOINT",
        description = "A file with an earlier checkpoint of this log.")
    private Path since;
  }

  @Override
  public Integer call() {
    data.files().mustExist();
    force.check(file);
    String verifier = key == null ? KeyFile.own(data.files()) : KeyFile.given(key);
    byte[] proof = data.reading(reading -> proof(reading, verifier));
    ProofResult result = ProofCheck.of(proof, VerifierKey.parse(verifier));
    if (result instanceof ProofResult.Refused refused) {
      if (what.since != null) {
        throw new Declined(what.since + " proves nothing here: " + refused.faults().get(0) + ".");
      }
      throw new Refusal(
          Exit.SURROUNDINGS,
          "No proof is written: it would not check: "
              + refused.faults().get(0)
              + ". Run: witnessmark ledger verify");
    }
    if (result instanceof ProofResult.Included included) {
      FalselySigned.refuse("proof", included.checkpoint().origin(), included.entries());
    }
    force.write(file, proof);
    out("Wrote " + kind(result) + " to " + file + ".");
    Path copy = key == null ? data.files().verifier() : key;
    out("Whoever has a copy of " + copy + " can check it, without the log:");
    out("  witnessmark ledger check-proof " + file + " --key " + copy);
    return Exit.YES;
  }

  private byte[] proof(Reading reading, String verifier) {
    if (what.since != null) {
      return growth(reading, verifier);
    }
    List<Long> entries = what.entries != null ? what.entries : found(reading);
    try {
      return !bundle && what.entries != null && entries.size() == 1
          ? TlogProof.of(reading, entries.get(0)).getBytes(StandardCharsets.UTF_8)
          : Bundle.of(reading, entries);
    } catch (IllegalArgumentException e) {
      throw new Declined(e.getMessage());
    }
  }

  private byte[] growth(Reading reading, String verifier) {
    String note = KeyFile.note(what.since);
    KeyFile.kept(what.since, note, verifier);
    try {
      return Growth.since(reading, note);
    } catch (RewrittenException e) {
      throw new Declined(e.getMessage());
    }
  }

  /** All entries of the jobs, scans too, and those that the record needs beside: keys, wrenches. */
  private List<Long> found(Reading reading) {
    List<Long> found = new ArrayList<>();
    Optional<String> none = Optional.empty();
    Query query =
        new Query(
            Optional.ofNullable(what.unit),
            Optional.ofNullable(what.job),
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            none,
            none);
    reading.find(query, stored -> found.add(stored.n()));
    if (found.isEmpty()) {
      throw new Declined(
          what.job != null
              ? "There is no entry of job "
                  + what.job
                  + "; witnessmark trace --kind job-opened lists all jobs."
              : "There is no entry about unit "
                  + what.unit
                  + "; witnessmark trace --kind job-opened lists all.");
    }
    found.addAll(Gather.of(reading, query.unit(), query.job()).keySet());
    return found;
  }

  private static String kind(ProofResult result) {
    if (result instanceof ProofResult.GoesOn) {
      return "a consistency proof (JSON)";
    } else if (result instanceof ProofResult.Included included) {
      int count = included.entries().size();
      return count == 1
          ? "the proof of entry " + included.entries().get(0).n()
          : "a proof bundle of " + count + " entries (JSON)";
    }
    throw new IllegalStateException("no word for " + result);
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
