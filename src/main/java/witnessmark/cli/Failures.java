package witnessmark.cli;

import java.io.UncheckedIOException;
import picocli.CommandLine;
import picocli.CommandLine.IExecutionExceptionHandler;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ParseResult;
import picocli.CommandLine.UnmatchedArgumentException;
import witnessmark.desk.Declined;
import witnessmark.entry.NoEntry;
import witnessmark.ledger.LedgerException;
import witnessmark.toml.FaultsException;

/** Turns what went wrong into a message for the person and an exit status. */
final class Failures implements IExecutionExceptionHandler, IParameterExceptionHandler {
  @Override
  public int handleExecutionException(Exception failure, CommandLine line, ParseResult result) {
    if (failure instanceof ParameterException p) {
      return told(p);
    }
    line.getErr()
        .println(failure instanceof UncheckedIOException u ? reason(u) : text(failure, line));
    line.getErr().flush();
    return status(failure);
  }

  @Override
  public int handleParseException(ParameterException e, String[] args) {
    return told(e);
  }

  /** One line that says what is wrong is read; under a page of usage it would not be. */
  private static int told(ParameterException e) {
    CommandLine line = e.getCommandLine();
    line.getErr().println(e.getMessage());
    UnmatchedArgumentException.printSuggestions(e, line.getErr());
    if (line.getSubcommands().isEmpty() || e instanceof UnmatchedArgumentException) {
      line.getErr().println("For help: " + line.getCommandSpec().qualifiedName() + " --help");
    } else {
      line.usage(line.getErr());
    }
    line.getErr().flush();
    return Exit.USAGE;
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
    if (failure instanceof NoEntry e) {
      return "The log holds what this program did not write: "
          + e.getMessage()
          + ". See all that was changed with: witnessmark ledger verify";
    }
    failure.printStackTrace(line.getErr());
    return "This program failed; the lines above say where. Nothing unfinished was recorded. Whether"
        + " the log was changed is told by: witnessmark ledger verify";
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
