package witnessmark.cli;

import java.io.UncheckedIOException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import witnessmark.desk.Declined;
import witnessmark.ledger.LedgerException;
import witnessmark.toml.FaultsException;

/** Turns what went wrong into a message for the person and an exit status. */
final class Failures implements IExecutionExceptionHandler {
  @Override
  public int handleExecutionException(Exception failure, CommandLine line, ParseResult result) {
    if (failure instanceof ParameterException p) {
      line.getErr().println(p.getMessage());
      line.usage(line.getErr());
      return Exit.USAGE;
    }
    line.getErr()
        .println(failure instanceof UncheckedIOException u ? reason(u) : text(failure, line));
    line.getErr().flush();
    return status(failure);
  }

  private static String text(Exception failure, CommandLine line) {
    boolean ours =
        failure instanceof Declined
            || failure instanceof LedgerException
            || failure instanceof FaultsException
            || failure instanceof Refusal;
    if (ours) {
      return failure.getMessage();
    }
    failure.printStackTrace(line.getErr());
    return "This program failed; the lines above say where. Nothing unfinished was recorded.";
  }

  private static String reason(UncheckedIOException failure) {
    return String.valueOf(failure.getMessage());
  }

  private static int status(Exception failure) {
    if (failure instanceof Declined) {
      return Exit.NO;
    }
    if (failure instanceof FaultsException || failure instanceof UncheckedIOException) {
      return Exit.INPUT;
    }
    return failure instanceof Refusal r ? r.status() : Exit.SURROUNDINGS;
  }
}
