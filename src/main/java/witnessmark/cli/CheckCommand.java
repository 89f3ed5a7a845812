package witnessmark.cli;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.Checked;
import witnessmark.cli.answer.Page;
import witnessmark.cli.answer.Places;
import witnessmark.cli.answer.ProofText;
import witnessmark.cli.answer.SightSentences;
import witnessmark.cli.answer.SightSummary;
import witnessmark.cli.answer.SightText;
import witnessmark.desk.Release;
import witnessmark.job.Plan;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.ProofRange;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;
import witnessmark.sight.Rack;
import witnessmark.sight.Sight;
import witnessmark.sight.Visibility;
import witnessmark.wrench.Unfit;
import witnessmark.wrench.Wrench;

/** Checks a procedure file. */
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    description = {
      "List every fault of a procedure file at once, what looks doubtful, and which",
      "mistakes at the bench the readings of the wrenches can and cannot reveal."
    },
    footer = {
      "",
      "Example:  witnessmark procedure check demo-data/RAM-210.toml --wrench TW-0417=angle"
    })
final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "FILE")
  private Path file;

  @Mixin private RackOption rack;

  @Option(names = "--all", description = "Print the mistakes that are seen, too.")
  private boolean all;

  @Mixin private GroupsOption groups;

  @Mixin private JsonOption json;

  @Override
  public Integer call() {
    Procedure procedure = ProcedureFile.parse(file.toString(), Files.text(file));
    Places places = new Places(procedure);
    Predicate<String> asked = Given.valid(spec, () -> groups.among(places.groups()));
    List<Wrench> enrolled = rack.enrolled();
    Map<String, Ability> abilities = Given.valid(spec, () -> rack.abilities(procedure, enrolled));
    Rack at = at(abilities, enrolled);
    Function<Ability, List<Announced>> sight =
        more ->
            Sight.of(procedure, (step, pass) -> at.at(step, pass).and(more)).stream()
                .filter(a -> asked.test(a.step()))
                .toList();
    List<Finding> findings =
        Release.findings(procedure, enrolled).stream().filter(f -> asked.test(f.step())).toList();
    List<ProofRange> ranges =
        ProofRange.of(procedure).stream().filter(r -> asked.test(r.step())).toList();
    if (json.wanted()) {
      List<Announced> announced = sight.apply(Ability.TORQUE_ONLY);
      json.print(
          spec.commandLine().getOut(),
          Checked.json(procedure, RackOption.words(abilities), findings, ranges, announced));
      return Exit.YES;
    }
    Page page = new Page(spec.commandLine().getOut());
    page.line(head(procedure));
    findings.forEach(f -> page.say("doubtful: " + f, 2));
    ProofText.print(page, ranges);
    page.space();
    page.say(RackOption.sentence(abilities));
    page.space();
    tell(page, places, sight);
    page.say("These checks look for slips of typing. They are never a source of torque values:");
    page.say("the maker's service instructions decide.");
    return Exit.YES;
  }

  private void tell(Page page, Places places, Function<Ability, List<Announced>> sight) {
    List<Announced> shown =
        sight.apply(Ability.TORQUE_ONLY).stream()
            .filter(a -> all || a.visibility() != Visibility.SEEN)
            .toList();
    if (groups.stated() && !shown.isEmpty()) {
      SightSentences.print(page, shown);
    } else {
      new SightSummary(places, sight).print(page);
      page.space();
      new SightText(page, places, shown).print();
    }
  }

  private String head(Procedure procedure) {
    Plan plan = new Plan(procedure);
    return file
        + ": no faults. "
        + procedure.id()
        + " revision "
        + procedure.revision()
        + ", "
        + procedure.steps().size()
        + " steps, "
        + plan.fasteners()
        + " fasteners, "
        + plan.passes()
        + " fastener passes.";
  }

  /** Where a step takes any wrench, one that is enrolled and cannot do it will not be used. */
  private static Rack at(Map<String, Ability> abilities, List<Wrench> enrolled) {
    return (step, pass) -> {
      Set<String> unfit =
          enrolled.stream()
              .filter(w -> !Unfit.fit(w, step, pass))
              .map(Wrench::serial)
              .collect(Collectors.toSet());
      Map<String, Ability> fit = new LinkedHashMap<>(abilities);
      if (step.wrenches().isEmpty()) {
        fit.keySet().removeAll(unfit);
      }
      return Rack.of(fit).at(step, pass);
    };
  }
}
