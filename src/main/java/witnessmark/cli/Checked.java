package witnessmark.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProofRange;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;

/** What a check of a procedure says, for programs. */
final class Checked {
  private Checked() {}

  static Map<String, Object> json(
      Procedure procedure,
      Map<String, Ability> abilities,
      List<Finding> findings,
      List<ProofRange> ranges,
      List<Announced> announced) {
    Map<String, String> wrenches = new LinkedHashMap<>();
    abilities.forEach((serial, ability) -> wrenches.put(serial, RackOption.words(ability)));
    return JsonOption.object(
        "procedure",
        procedure.id(),
        "revision",
        procedure.revision(),
        "wrenches",
        wrenches,
        "findings",
        findings.stream()
            .map(
                f ->
                    JsonOption.object(
                        "code", f.doubt().code(), "step", f.step(), "text", f.sentence()))
            .toList(),
        "notes",
        ranges.stream().map(ProofText::sentence).toList(),
        "mistakes",
        announced.stream()
            .map(
                a ->
                    JsonOption.object(
                        "code",
                        a.mistake().code(),
                        "step",
                        a.step(),
                        "pass",
                        a.pass(),
                        "shown",
                        a.visibility().code(),
                        "text",
                        a.sentence()))
            .toList());
  }
}
