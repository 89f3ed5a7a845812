package witnessmark.cli.answer;

import java.util.ArrayList;
import java.util.List;
import witnessmark.report.Figure;
import witnessmark.report.Scale;
import witnessmark.report.StudyFigures;
import witnessmark.report.StudyNotes;
import witnessmark.report.Table;
import witnessmark.sample.Gathered;
import witnessmark.sample.Study;
import witnessmark.sample.Value;
import witnessmark.stats.Analysis;
import witnessmark.stats.Capability;
import witnessmark.stats.IndividualsChart;
import witnessmark.stats.RunRule;
import witnessmark.stats.Signal;

/** Studies for a terminal. */
public final class CapabilityText {
  /** Of the points that run rules mark, so many are listed. */
  private static final int LISTED = 12;

  private final Page page;

  private CapabilityText(Page page) {
    this.page = page;
  }

  public static void print(Page page, Gathered gathered) {
    CapabilityText text = new CapabilityText(page);
    for (Study study : gathered.studies()) {
      text.study(study);
      page.space();
    }
    List<String> beside = StudyNotes.omissions(gathered.beside());
    if (!beside.isEmpty()) {
      page.say("Of the readings asked for, " + String.join("; ", beside) + ".", 2);
    }
    if (!gathered.studies().isEmpty()) {
      StudyNotes.ALWAYS.forEach(n -> page.say(n, 2));
    }
  }

  private void study(Study study) {
    page.line(study.title());
    page.line("  asked for: " + study.asked());
    if (study.values().isEmpty()) {
      figures(StudyFigures.tries(study));
      page.say("No reading is a value of the process.", 2);
    } else {
      Analysis analysis = study.analysis();
      List<Figure> figures = new ArrayList<>(StudyFigures.of(study, analysis));
      figures.addAll(StudyFigures.tries(study));
      figures(figures);
      if (analysis.capability() instanceof Capability.Withheld w) {
        page.say("No index is stated. " + String.join(" ", w.because()), 2);
        page.space();
      }
      analysis.chart().ifPresent(c -> signals(study, analysis, c));
      StudyNotes.cautions(study, analysis).forEach(c -> page.say(c, 2));
    }
    List<String> omitted = StudyNotes.omissions(study.omitted());
    if (!omitted.isEmpty()) {
      page.say("Not among the values: " + String.join("; ", omitted) + ".", 2);
    }
  }

  private void figures(List<Figure> figures) {
    Table table = new Table("", "");
    figures.forEach(f -> table.add("  " + f.name(), f.text()));
    table.toString().lines().skip(1).forEach(page::line);
    page.space();
  }

  private void signals(Study study, Analysis analysis, IndividualsChart chart) {
    if (chart.signals().isEmpty()) {
      return;
    }
    Scale scale = Scale.of(analysis.summary(), study.unit());
    Table table = new Table("  POINT", "ENTRY", "UNIT", "FASTENER", "TORQUE", "");
    for (Signal signal : chart.signals().stream().limit(LISTED).toList()) {
      Value value = study.values().get(signal.index());
      table.add(
          "  " + (signal.index() + 1),
          "" + value.entry(),
          value.unit(),
          value.fastener(),
          scale.text(value.number()),
          StudyNotes.rules(signal));
    }
    table.toString().lines().forEach(page::line);
    int more = chart.signals().size() - LISTED;
    if (more > 0) {
      page.line("  and " + more + " more (--json lists all)");
    }
    for (RunRule rule : RunRule.values()) {
      if (chart.signals().stream().anyMatch(s -> s.rules().contains(rule))) {
        page.line("  rule " + rule.number() + ": " + rule.text());
      }
    }
    page.space();
  }
}
