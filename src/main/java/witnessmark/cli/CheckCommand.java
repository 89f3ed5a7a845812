package witnessmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.job.Plan;
import witnessmark.procedure.Ability;
import witnessmark.procedure.Announced;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.ProofRange;
import witnessmark.procedure.Rack;
import witnessmark.procedure.Sanity;
import witnessmark.procedure.Sight;
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

  @Mixin private JsonOption json;

  @Override
  public Integer call() {
    Procedure procedure = ProcedureFile.parse(file.toString(), Files.text(file));
    List<Wrench> enrolled = rack.enrolled();
    Map<String, Ability> abilities = Given.valid(spec, () -> rack.abilities(procedure, enrolled));
    List<Finding> findings = new ArrayList<>(Sanity.findings(procedure));
    findings.addAll(Unfit.findings(procedure, enrolled));
    List<Announced> announced = Sight.of(procedure, at(abilities, enrolled));
    if (json.wanted()) {
      json.print(
          spec.commandLine().getOut(), Checked.json(procedure, abilities, findings, announced));
      return Exit.YES;
    }
    head(procedure);
    findings.forEach(f -> out("doubtful: " + f));
    ProofRange.of(procedure).forEach(r -> out("note: " + r));
    out("");
    out(RackOption.sentence(abilities));
    groups(announced);
    out("");
    out("These checks look for slips of typing. They are never a source of torque values:");
    out("the maker's service instructions decide.");
    return Exit.YES;
  }

  private void head(Procedure procedure) {
    Plan plan = new Plan(procedure);
    out(
        file
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
            + " fastener passes.");
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

  private void groups(List<Announced> announced) {
    String last = "";
    for (Checked.Line line : Checked.lines(announced, all)) {
      if (!line.step().equals(last)) {
        last = line.step();
        out("");
        out(last);
      }
      out("  " + line);
    }
  }

  private void out(String line) {
    spec.commandLine().getOut().println(line);
    spec.commandLine().getOut().flush();
  }
}
