package witnessmark.cli.answer;

import java.util.List;
import java.util.Map;
import witnessmark.procedure.Finding;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProofRange;
import witnessmark.sight.Announced;

/** What a check of a procedure says, for programs. */
public final class Checked {
  private Checked() {}

  public static Map<String, Object> json(
      Procedure procedure,
      Map<String, String> wrenches,
      List<Finding> findings,
      List<ProofRange> ranges,
      List<Announced> announced) {
    return Json.object(
        "procedure",
        procedure.id(),
        "revision",
        procedure.revision(),
        "wrenches",
        wrenches,
        "findings",
        findings.stream()
            .map(f -> Json.object("code", f.doubt().code(), "step", f.step(), "text", f.sentence()))
            .toList(),
        "notes",
        ranges.stream().map(ProofText::sentence).toList(),
        "mistakes",
        announced.stream()
            .map(
                a ->
                    Json.object(
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
