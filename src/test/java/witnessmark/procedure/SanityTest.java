package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SanityTest {
  private static final String HEADER =
      "[procedure]\nid = \"RAM-210\"\nrevision = \"C\"\ntitle = \"Rear-axle module\"\n";

  private static String group(String id, String keys) {
    return "[[step]]\nid = \"" + id + "\"\nkind = \"tighten\"\ntitle = \"T\"\n" + keys;
  }

  private static String single(String id, String keys) {
    return group(id, "fasteners = 1\n" + keys);
  }

  private static String band(String low, String high) {
    return "min = \"" + low + " N.m\"\nmax = \"" + high + " N.m\"\n";
  }

  private static String bolt(String thread, String propertyClass) {
    return "thread = \"" + thread + "\"\nproperty-class = \"" + propertyClass + "\"\n";
  }

  private static void findings(String steps, String... expected) {
    assertThat(Sanity.findings(ProcedureFile.parse("p.toml", HEADER + steps)))
        .extracting(Finding::toString)
        .containsExactly(expected);
  }

  @Test
  void groupsOpenTogetherWithOverlappingBandsCannotBeToldApart() {
    findings(
        single("a", "after = []\n" + band("20", "30"))
            + single("b", "after = []\n" + band("30", "40"))
            + single("c", "after = []\n" + band("28", "29")),
        "bands-overlap@a: can be open at the same time as \"b\" (final 20 to 30 N.m beside"
            + " final 30 to 40 N.m) and \"c\" (final 20 to 30 N.m beside final 28 to 29 N.m):"
            + " torque bands overlap and no wrench parts them, so that a reading without a position"
            + " could belong to either; let one wait for the other, or give them different"
            + " wrenches");
  }

  @Test
  void groupsApartBySequenceByBandOrByWrenchAreToldApart() {
    String free = "after = []\n";
    findings(single("a", band("20", "30")) + single("b", band("25", "35")));
    findings(single("a", free + band("20", "30")) + single("b", free + band("30.1", "40")));
    findings(
        single("a", free + band("20", "30") + "wrenches = [\"TW-0417\"]\n")
            + single("b", free + band("20", "30") + "wrenches = [\"TW-0502\"]\n"));
  }

  @Test
  void aWrenchListOnOneSideOnlyPartsNothing() {
    String free = "after = []\n";
    findings(
        single("a", free + band("20", "30") + "wrenches = [\"TW-0417\"]\n")
            + single("b", free + band("20", "30")),
        "bands-overlap@a: can be open at the same time as \"b\" (final 20 to 30 N.m beside"
            + " final 20 to 30 N.m): torque bands overlap and no wrench parts them, so that a"
            + " reading without a position could belong to either; let one wait for the other, or"
            + " give them different wrenches");
  }

  @Test
  void aStepThatWaitsThroughAnotherIsNotOpenTogetherWithTheFirst() {
    findings(
        single("a", band("20", "30"))
            + "[[step]]\nid = \"w\"\nkind = \"attest\"\ntitle = \"T\"\nstatement = \"S.\"\n"
            + single("b", "after = [\"w\"]\n" + band("20", "30")));
  }

  @Test
  void aLaterPassThatAimsLower() {
    findings(
        single(
            "a",
            "[[step.pass]]\nname = \"snug\"\n"
                + band("30", "40")
                + "[[step.pass]]\nname = \"final\"\n"
                + band("20", "30")),
        "passes-descend@a: pass \"final\" (20 to 30 N.m) aims lower than pass \"snug\" before"
            + " it (30 to 40 N.m): are the passes in order?");
  }

  @Test
  void aToleranceWiderOrNarrowerThanUsual() {
    String torque = "torque = \"20 N.m\"\ntolerance = ";
    findings(single("a", torque + "\"30 %\"\n"));
    findings(
        single("a", torque + "\"30.1 %\"\n"),
        "band-wide@a: pass \"final\" allows 13.98 to 26.02 N.m, wider than ±30 %: is that"
            + " meant?");
    findings(single("a", torque + "\"1 %\"\n"));
    findings(
        single("a", torque + "\"0.9 %\"\n"),
        "band-narrow@a: pass \"final\" allows 19.82 to 20.18 N.m, narrower than ±1 %, which"
            + " hardly any wrench can show");
  }

  @Test
  void aDangerousJointWhoseBoltIsNotTold() {
    findings(
        single(
            "a", band("20", "30") + "criticality = \"danger\"\ntries = 3\nthread = \"M8x1.25\"\n"),
        "bolt-not-told@a: criticality is danger, but thread and property-class are not both"
            + " given, so that the torque cannot be checked for a slip of unit or digit");
  }

  @Test
  void aDangerousFastenerThatMayBePulledWithoutEnd() {
    String bolt = band("20", "25") + bolt("M8x1.25", "8.8");
    findings(
        single("a", bolt + "criticality = \"danger\"\n"),
        "no-tries@a: criticality is danger, but tries is not given, so that a fastener may"
            + " be pulled again and again without ever being accepted; give it, e.g. tries = 3");
    findings(single("a", bolt + "criticality = \"danger\"\ntries = 3\n"));
    findings(single("a", bolt + "criticality = \"function\"\n"));
  }

  @Test
  void aConfirmationToBeRenewedForWhichNoFastenerWaits() {
    String attest =
        "[[step]]\nid = \"w\"\nkind = \"attest\"\ntitle = \"T\"\nstatement = \"S.\"\nrenew = true\n";
    findings(
        single("a", band("20", "30")) + attest,
        "never-renewed@w: renew is true, but no tighten step waits for it directly, so that it"
            + " is never to be confirmed again; name it in after of the fasteners that it is about");
    findings(attest + single("a", band("20", "30")));
    findings(
        single("a", "[[step.pass]]\nname = \"final\"\nafter = [\"w\"]\n" + band("20", "30"))
            + attest.replace("renew", "after = []\nrenew"));
  }

  @Test
  void aBoltInNoKnownFormIsSaidToBeUnchecked() {
    findings(
        single("a", band("20", "30") + bolt("M8", "8.8")),
        "bolt-unknown@a: M8 8.8 is in no form whose strength is known (M8x1.25 with 8.8, 10.9"
            + " or 12.9; 5/16-18 with grade 2, 5 or 8), so its torque was not checked for a slip of"
            + " unit or digit");
  }

  /** M8x1.25 8.8: proof load 21 228 N, so 50.9 N·m at K = 0.30 and 17.0 N·m at K = 0.10. */
  @Test
  void aDigitTooManyAndADigitTooFew() {
    findings(
        single("a", "torque = \"240 N.m\"\ntolerance = \"10 %\"\n" + bolt("M8x1.25", "8.8")),
        "torque-high@a: 264 N.m in pass \"final\" is 518 % of the torque that reaches proof"
            + " load of M8x1.25 8.8 even at high friction (nut factor 0.30): are unit, digits,"
            + " thread and class right? The number would make sense in lbf.in or kgf.cm, or with a"
            + " digit less");
    findings(
        single("a", "torque = \"1.6 N.m\"\ntolerance = \"10 %\"\n" + bolt("M8x1.25", "8.8")),
        "torque-low@a: 1.6 N.m is 9 % of the torque that reaches proof load of M8x1.25 8.8"
            + " at low friction (nut factor 0.10): is the unit right? The number would make sense in"
            + " kgf.m, or with a digit more");
    findings(single("a", band("3.3", "3.4") + bolt("M8x1.25", "8.8")));
    findings(single("a", band("45", "50.8") + bolt("M8x1.25", "8.8")));
  }

  @Test
  void aSnugPassMayBeAsLowAsItLikes() {
    findings(
        single(
            "a",
            bolt("M8x1.25", "8.8")
                + "[[step.pass]]\nname = \"snug\"\n"
                + band("0.9", "1.1")
                + "[[step.pass]]\nname = \"final\"\n"
                + band("20", "30")));
  }

  @Test
  void findingsStandInTheOrderOfTheFile() {
    String wide = "torque = \"20 N.m\"\ntolerance = \"31 %\"\n";
    assertThat(
            Sanity.findings(
                ProcedureFile.parse(
                    "p.toml",
                    HEADER
                        + single("b", wide)
                        + single("a", "after = []\n" + band("30", "31"))
                        + single("c", "after = []\n" + wide))))
        .extracting(Finding::key)
        .containsExactly("bands-overlap@b", "band-wide@b", "band-wide@c");
  }
}
