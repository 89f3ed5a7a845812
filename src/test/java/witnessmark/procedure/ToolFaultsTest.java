package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import org.junit.jupiter.api.Test;
import witnessmark.toml.FaultsException;

/** What a step may ask of the wrench; keys begin on line 12. */
class ToolFaultsTest {
  private static final String STEP =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      [[step]]
      id = "pivot"
      kind = "tighten"
      title = "Pivot bolts"
      fasteners = 2
      torque = "45 N.m"
      tolerance = "10 %"
      """;

  private static void faults(String keys, String... expected) {
    FaultsException thrown =
        catchThrowableOfType(
            FaultsException.class, () -> ProcedureFile.parse("p.toml", STEP + keys));
    assertThat(thrown).as(keys).isNotNull();
    assertThat(thrown.getMessage().split("\n")).containsExactly(expected);
  }

  private static Tool tool(String keys) {
    Procedure procedure = ProcedureFile.parse("p.toml", STEP + keys);
    return ((TightenStep) procedure.steps().get(0)).care().tool();
  }

  @Test
  void unknownWordsAreToldTheNearest() {
    faults(
        "wrench-kind = \"indicatng\"\nacceptance = \"guardd\"\nguard = \"1\"\n",
        "p.toml:12:1: unknown wrench kind \"indicatng\"; did you mean \"indicating\"?",
        "p.toml:13:1: unknown acceptance \"guardd\"; did you mean \"guarded\"?");
  }

  @Test
  void aGuardBelongsToAGuardedStepAndIsWithinBounds() {
    faults(
        "guard = \"1\"\n",
        "p.toml:12:1: guard without guarded acceptance; write acceptance = \"guarded\", too");
    faults(
        "acceptance = \"guarded\"\nguard = \"0\"\nsteps-in-band = \"-1\"\n",
        "p.toml:13:1: guard 0 is out of range; 0.1 to 3 is allowed",
        "p.toml:14:1: steps-in-band -1 is out of range; 0 to 1000 is allowed");
    faults(
        "acceptance = \"guarded\"\nguard = 1\n",
        "p.toml:13:1: guard is a number without quotes; write guard = \"1\"");
  }

  @Test
  void anAdapterHasALeverAndAnOffsetAndLeavesALever() {
    faults(
        "adapter = { lever = \"350mm\", angel = \"0\" }\n",
        "p.toml:12:1: adapter has no \"offset\"; give it, e.g. offset = \"40 mm\"",
        "p.toml:12:13: \"350mm\" is not a length; write number, blank, unit, e.g. \"350 mm\"",
        "p.toml:12:30: unknown key \"angel\" in adapter; did you mean \"angle\"?");
    faults(
        "adapter = { lever = \"40 mm\", offset = \"350 mm\", angle = \"180\" }\n",
        "p.toml:12:1: offset 350 mm folded back leaves nothing of lever 40 mm; the fastener must"
            + " lie before the handle");
    faults("adapter = \"crow-foot\"\n", "p.toml:12:1: \"adapter\" is not a table; write a table");
  }

  @Test
  void whatIsLeftOutHasTheDocumentedDefault() {
    assertThat(tool("")).isEqualTo(Tool.ANY);
    assertThat(tool("acceptance = \"guarded\"\n").acceptance().guard()).contains(BigDecimal.ONE);
    assertThat(tool("acceptance = \"simple\"\n").acceptance()).isEqualTo(Acceptance.SIMPLE);
    assertThat(
            tool("adapter = { lever = \"13 in\", offset = \"2 cm\" }\n")
                .adapter()
                .orElseThrow()
                .angle())
        .hasToString("0");
  }
}
