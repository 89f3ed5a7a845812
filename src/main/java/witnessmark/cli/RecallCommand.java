package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.certificate.CallBack;
import witnessmark.certificate.Paper;
import witnessmark.cli.answer.RecallText;
import witnessmark.ledger.Reading;
import witnessmark.recall.Finding;
import witnessmark.recall.Recall;
import witnessmark.recall.Survey;
import witnessmark.report.Provenance;

/** Judges anew what a wrench touched. */
@Command(
    name = "recall",
    mixinStandardHelpOptions = true,
    description = {
      "List every joint that a wrench touched since its last good calibration, judged anew with",
      "the error with which it was found: by a calibration (--found), or a check that failed.",
      "Exit status 1 when a joint may be out of its band, 2 when nothing says how it was found."
    },
    footer = {
      "",
      "Example:  witnessmark recall TW-0417",
      "          witnessmark recall TW-0417 --csv > call-back.csv"
    })
final class RecallCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SERIAL")
  private String serial;

  @Option(names = "--finding", description = "Entry that says how it was found (default: newest).")
  private Long finding;

  @Option(names = "--all", description = "List joints that stay in band, too.")
  private boolean all;

  @Option(
      names = "--pdf",
      paramLabel = "FILE.pdf",
      description = "Also write the call-back as a PDF.")
  private Path pdf;

  @ArgGroup private Form form = new Form();
  @Mixin private ForceOption force;
  @Mixin private DataOption data;

  /** How to print; a table when nothing is said. */
  static final class Form {
    @Option(names = "--csv", description = "Print all joints as comma-separated values (RFC 4180).")
    private boolean csv;

    @Option(names = "--json", description = "Print all joints as JSON.")
    private boolean json;
  }

  @Override
  public Integer call() {
    Registered.wrench(spec, data, serial);
    force.check(pdf);
    Optional<Answer> answer = data.reading(r -> r.atOneMoment(() -> answer(r)));
    Optional<Recall> recall = answer.map(Answer::recall);
    if (recall.isEmpty()) {
      throw new Refusal(
          Exit.USAGE,
          "Nothing on record says how "
              + serial
              + " was found after a good calibration. Enter it: wrench calibrate "
              + serial
              + " --found …");
    }
    if (pdf != null) {
      force.write(pdf, CallBack.render(recall.get(), Paper.A4, answer.get().source()));
    }
    PrintWriter out = spec.commandLine().getOut();
    if (form.csv) {
      PrintWriter exact = TerminalWriter.exact(out);
      exact.print(RecallText.csv(recall.get()));
      exact.flush();
    } else if (form.json) {
      new JsonOption().print(out, RecallText.json(recall.get()));
    } else {
      out.print(RecallText.table(recall.get(), all));
    }
    out.flush();
    Wrote.say(spec, pdf, form.csv || form.json);
    return recall.get().units().isEmpty() ? Exit.YES : Exit.NO;
  }

  /** A recall and what it was made from. */
  private record Answer(Recall recall, Provenance source) {}

  private Optional<Answer> answer(Reading reading) {
    return survey(new Survey(reading, serial)).map(r -> new Answer(r, Source.of(reading)));
  }

  private Optional<Recall> survey(Survey survey) {
    OptionalLong asked = finding == null ? OptionalLong.empty() : OptionalLong.of(finding);
    Optional<Finding> found = survey.finding(asked);
    return found.map(survey::recall);
  }
}
