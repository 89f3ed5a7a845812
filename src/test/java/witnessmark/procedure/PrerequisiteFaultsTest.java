package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import witnessmark.toml.FaultsException;

class PrerequisiteFaultsTest {
  private static final String HEADER =
      "[procedure]\nid = \"RAM-210\"\nrevision = \"C\"\ntitle = \"Rear-axle module\"\n";

  /** Four lines and what is given. */
  private static String attest(String id, String more) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"attest\"\ntitle = \"T\"\nstatement = \"S.\"\n"
        + more;
  }

  private static String tighten(String id, String more) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"tighten\"\ntitle = \"T\"\nfasteners = 1\n"
        + more;
  }

  private static String pass(String name, String more) {
    return "[[step.pass]]\nname = \"" + name + "\"\nmin = \"8 N.m\"\nmax = \"9 N.m\"\n" + more;
  }

  private static void faults(String steps, String... expected) {
    String text = HEADER + steps;
    FaultsException thrown =
        catchThrowableOfType(FaultsException.class, () -> ProcedureFile.parse("p.toml", text));
    assertThat(thrown).as("faults of:\n" + text).isNotNull();
    assertThat(thrown.getMessage().split("\n")).containsExactly(expected);
  }

  @Test
  void aStepOrPassThatDoesNotExist() {
    faults(
        attest("wire", "after = []\n")
            + tighten("pivot", "after = [\"wire:final\"]\n" + pass("snug", "") + pass("final", ""))
            + attest("a", "after = [\"pivott\", \"pivot:sung\", \"\", \"wire\"]\n"),
        "p.toml:16:10: \"wire:final\" names a pass, but step \"wire\" has none; write \"wire\"",
        "p.toml:30:10: no step has the id \"pivott\"; did you mean \"pivot\"?",
        "p.toml:30:20: step \"pivot\" has no pass \"sung\"; did you mean \"snug\"?",
        "p.toml:30:34: no step has the id \"\"; did you mean \"a\"?");
  }

  @Test
  void aStepOrPassThatWaitsForItself() {
    faults(
        tighten(
                "pivot",
                "after = [\"pivot\"]\n"
                    + pass("snug", "after = [\"pivot:final\"]\n")
                    + pass("final", "after = [\"pivot:snug\", \"pivot:final\"]\n"))
            + attest("wire", "after = [\"wire\"]\n"),
        "p.toml:10:10: \"pivot:snug\" waits for itself through \"pivot\"; take \"pivot\" out",
        "p.toml:15:10: \"pivot:snug\" waits for itself through \"pivot:final\"; take"
            + " \"pivot:final\" out",
        "p.toml:20:24: \"pivot:final\" waits for itself through \"pivot:final\"; take"
            + " \"pivot:final\" out",
        "p.toml:26:10: \"wire\" waits for itself through \"wire\"; take \"wire\" out");
  }

  @Test
  void aPassThatWaitsForALaterStepWhichWaitsByMereSequence() {
    faults(
        tighten("pivot", pass("snug", "") + pass("final", "after = [\"cross-member\"]\n"))
            + attest("cross-member", ""),
        "p.toml:18:10: prerequisites go in a circle: pivot:final -> cross-member -> pivot:final"
            + " (-> means waits for); \"cross-member\" waits for all of \"pivot\" only because it"
            + " comes later in the file: give it after = [\"pivot:snug\"] or after = []");
  }

  @Test
  void theMendedFormOfThatFileParses() {
    Procedure procedure =
        ProcedureFile.parse(
            "p.toml",
            HEADER
                + tighten("pivot", pass("snug", "") + pass("final", "after = [\"cross-member\"]\n"))
                + attest("cross-member", "after = [\"pivot:snug\"]\n"));

    assertThat(Stages.of(procedure).get(1).requires()).containsExactly(0, 2);
  }

  @Test
  void aStepThatWaitsForALaterOneWithoutAPassBetween() {
    faults(
        attest("a", "after = [\"c\"]\n") + attest("b", "") + attest("c", ""),
        "p.toml:10:10: prerequisites go in a circle: a -> c -> b -> a (-> means waits for);"
            + " \"b\" waits for all of \"a\" only because it comes later in the file: give it"
            + " after = []");
  }

  @Test
  void stepsThatWaitForEachOtherOnPurposeAndWhatWaitsForThem() {
    faults(
        attest("a", "after = [\"b\"]\n")
            + attest("b", "after = [\"a\"]\n")
            + attest("c", "")
            + attest("free", "after = []\n")
            + tighten("d", "after = []\n" + pass("snug", "") + pass("final", "after = [\"c\"]\n")),
        "p.toml:10:10: prerequisites go in a circle: a -> b -> a (-> means waits for); take one of"
            + " these prerequisites out",
        "p.toml:18:1: \"c\" and \"d:final\" can never be reached, waiting for a cycle of"
            + " prerequisites; mend the cycle");
  }

  @Test
  void aLongCircleIsShownByItsBeginningAndItsEnd() {
    StringBuilder steps = new StringBuilder(attest("s0", "after = [\"s29\"]\n"));
    for (int i = 1; i < 30; i++) {
      steps.append(attest("s" + i, ""));
    }
    faults(
        steps.toString(),
        "p.toml:10:10: prerequisites go in a circle: s0 -> s29 -> s28 -> s27 -> s26 -> s25 ->"
            + " (19 more) -> s5 -> s4 -> s3 -> s2 -> s1 -> s0 (-> means waits for); \"s1\" waits"
            + " for all of \"s0\" only because it comes later in the file: give it after = []");
  }
}
