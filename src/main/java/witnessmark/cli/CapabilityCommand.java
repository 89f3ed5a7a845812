package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.chart.PdfFile;
import witnessmark.chart.SvgFile;
import witnessmark.cli.answer.CapabilityJson;
import witnessmark.cli.answer.CapabilityText;
import witnessmark.cli.answer.Page;
import witnessmark.entry.EntryJson;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.Query;
import witnessmark.report.Provenance;
import witnessmark.sample.Gathered;
import witnessmark.sample.Gathering;
import witnessmark.sample.Question;
import witnessmark.sample.Study;
import witnessmark.stats.Capability;

/** Studies how torque was applied. */
@Command(
    name = "capability",
    mixinStandardHelpOptions = true,
    description = {
      "Study how evenly torque was applied: capability, control charts, shares outside the band.",
      "Values are the last credited readings of fasteners in jobs, of the last tightening pass",
      "unless --pass names another. Each step, pass and band is a study of its own.",
      "Exit status 1 when nothing matches, or no index can be stated of any study."
    },
    footer = {
      "",
      "Example:  witnessmark capability --group carrier-left --from 2026-11-01 --pdf november.pdf",
      "          witnessmark capability --wrench TW-0417 --json"
    })
final class CapabilityCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--fastener", description = "A fastener, e.g. carrier-left/3.")
  private String fastener;

  @Option(names = "--group", paramLabel = "STEP", description = "All fasteners of a step.")
  private String group;

  @Option(names = "--wrench", description = "Readings of that wrench.")
  private String wrench;

  @Option(names = "--operator", paramLabel = "BADGE", description = "Readings of that person.")
  private String operator;

  @Option(names = "--procedure")
  private String procedure;

  @Option(names = "--revision")
  private String revision;

  @Option(names = "--pass", description = "Default: the last pass that tightens.")
  private String pass;

  @Option(names = "--from", description = "Date or RFC 3339 time, inclusive; a date is UTC.")
  private String from;

  @Option(names = "--to", description = "Date (inclusive) or RFC 3339 time (exclusive).")
  private String to;

  @Option(names = "--svg", paramLabel = "FILE", description = "Write the page of one study.")
  private Path svg;

  @Option(names = "--pdf", paramLabel = "FILE", description = "Write a page of each study.")
  private Path pdf;

  @Mixin private ForceOption force;
  @Mixin private JsonOption json;
  @Mixin private DataOption data;

  @Override
  public Integer call() {
    Question question = Given.valid(spec, this::question);
    force.check(svg);
    force.check(pdf);
    Answer answer =
        data.reading(r -> r.atOneMoment(() -> new Answer(gather(r, question), Source.of(r))));
    Gathered gathered = answer.gathered();
    List<Study> studies = gathered.studies();
    PrintWriter out = spec.commandLine().getOut();
    if (json.wanted()) {
      json.print(out, CapabilityJson.of(gathered));
    } else {
      CapabilityText.print(new Page(out), gathered);
    }
    if (studies.isEmpty()) {
      spec.commandLine().getErr().println("Nothing on record matches.");
      data.reading(r -> Registered.strangers(r, named()))
          .forEach(spec.commandLine().getErr()::println);
      return Exit.NO;
    }
    draw(studies.stream().filter(s -> !s.values().isEmpty()).toList(), answer.source());
    return studies.stream().anyMatch(CapabilityCommand::stated) ? Exit.YES : Exit.NO;
  }

  /** What was gathered, and from what. */
  private record Answer(Gathered gathered, Provenance source) {}

  private static boolean stated(Study study) {
    return !study.values().isEmpty() && study.analysis().capability() instanceof Capability.Stated;
  }

  private Question question() {
    return new Question(
        Optional.ofNullable(fastener),
        Optional.ofNullable(group),
        Optional.ofNullable(wrench),
        Optional.ofNullable(operator),
        Optional.ofNullable(procedure),
        Optional.ofNullable(revision),
        Optional.ofNullable(pass),
        Optional.ofNullable(from).map(Day::begin),
        Optional.ofNullable(to).map(Day::end));
  }

  private Query named() {
    Optional<String> any = Optional.empty();
    return new Query(
        any,
        any,
        Optional.ofNullable(procedure),
        Optional.ofNullable(fastener == null ? group : fastener),
        Optional.ofNullable(wrench),
        Optional.ofNullable(operator),
        any,
        any,
        any,
        any,
        any);
  }

  /** Reads the log once for each kind that matters, in constant memory beside what is kept. */
  private static Gathered gather(Reading reading, Question question) {
    Gathering gathering = new Gathering(question);
    try (Progress progress = new Progress("reading", reading.size())) {
      for (String kind : Gathering.KINDS) {
        reading.find(
            of(kind),
            stored -> {
              gathering.take(stored.n(), EntryJson.read(stored.bytes()));
              progress.accept(stored.n());
            });
      }
    }
    return gathering.result();
  }

  private static Query of(String kind) {
    Optional<String> any = Optional.empty();
    return new Query(any, any, any, any, any, any, any, any, Optional.of(kind), any, any, any);
  }

  private void draw(List<Study> studies, Provenance source) {
    if (svg == null && pdf == null) {
      return;
    }
    if (studies.isEmpty()) {
      throw new Refusal(Exit.NO, "There is no value to draw.");
    }
    // no window is wanted, whatever the desktop
    System.setProperty("java.awt.headless", "true");
    if (svg != null) {
      force.write(svg, SvgFile.of(only(studies), source));
      Wrote.say(spec, svg, json.wanted());
    }
    if (pdf != null) {
      force.write(pdf, PdfFile.of(studies, source));
      Wrote.say(spec, pdf, json.wanted());
    }
  }

  private static Study only(List<Study> studies) {
    if (studies.size() == 1) {
      return studies.get(0);
    }
    throw new Refusal(
        Exit.USAGE,
        "--svg draws one study, and there are "
            + studies.size()
            + ". Narrow it down with --group, --procedure, --revision or --pass, or take --pdf:\n  "
            + String.join("\n  ", studies.stream().map(s -> s.title() + ", " + s.band()).toList()));
  }
}
