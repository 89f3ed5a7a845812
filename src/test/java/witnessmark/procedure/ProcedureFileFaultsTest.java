package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.Test;
import witnessmark.toml.FaultsException;

/** Each text is a whole file; the assertion is everything that is said about it. */
class ProcedureFileFaultsTest {
  /** Four lines, so that the first step stands on line 5. */
  private static final String HEADER =
      """
      [procedure]
      id = "RAM-210"
      revision = "C"
      title = "Rear-axle module"
      """;

  private static final String TIGHTEN =
      """
      [[step]]
      id = "pivot"
      kind = "tighten"
      title = "Pivot bolts"
      """;

  private static final String ATTEST =
      """
      [[step]]
      kind = "attest"
      title = "Safety wire"
      statement = "It is wired."
      """;

  private static final String MEASURE =
      """
      [[step]]
      id = "gap"
      kind = "measure"
      title = "Gap"
      """;

  private static void faults(String text, String... expected) {
    FaultsException thrown =
        catchThrowableOfType(FaultsException.class, () -> ProcedureFile.parse("p.toml", text));
    assertThat(thrown).as("faults of:\n" + text).isNotNull();
    assertThat(thrown.getMessage().split("\n")).containsExactly(expected);
  }

  /** Faults of a tighten step whose further keys, from line 9, are given. */
  private static void group(String keys, String... expected) {
    faults(HEADER + TIGHTEN + keys, expected);
  }

  /** Faults of a tighten step of two fasteners; keys from line 10. */
  private static void pair(String keys, String... expected) {
    group("fasteners = 2\n" + keys, expected);
  }

  private static void order(String keys, String... expected) {
    group("torque = \"9 N.m\"\ntolerance = \"10 %\"\n" + keys, expected);
  }

  private static void measure(String keys, String... expected) {
    faults(HEADER + MEASURE + keys, expected);
  }

  @Test
  void textThatIsNotToml() {
    faults(
        "procedure = RAM-210",
        "p.toml:1:13: Unexpected 'R', expected ', \", ''', \"\"\", a number, a boolean, a"
            + " date/time, an array, or a table; the file must be TOML 1.0");
  }

  @Test
  void nothingAtAll() {
    faults(
        "",
        "p.toml:1:1: the file has no [procedure]; begin with its id, revision and title",
        "p.toml:1:1: the procedure has no steps; write at least one [[step]]");
  }

  @Test
  void aHeaderWithoutItsKeysAndAnEmptyListOfSteps() {
    faults(
        "step = []\n[procedure]\nrevison = \"C\"\n",
        "p.toml:1:1: the procedure has no steps; write at least one [[step]]",
        "p.toml:2:1: procedure has no \"id\"; give it, e.g. id = \"RAM-210\"",
        "p.toml:2:1: procedure has no \"revision\"; give it, e.g. revision = \"C\"",
        "p.toml:2:1: procedure has no \"title\"; give a title for people",
        "p.toml:3:1: unknown key \"revison\" in procedure; did you mean \"revision\"?");
  }

  @Test
  void aMalformedHeader() {
    faults(
        """
        [procedure]
        id = " RAM"
        revision = ""
        title = " "
        unit-pattern = "ATR-(26"
        """
            + ATTEST.replace("kind", "id = \"wire\"\nkind"),
        "p.toml:2:1: procedure id \" RAM\" is malformed; 1 to 64 printable characters without"
            + " blanks at the ends are allowed",
        "p.toml:3:1: procedure revision \"\" is malformed; 1 to 64 printable characters without"
            + " blanks at the ends are allowed",
        "p.toml:4:1: title is blank; write what people should read",
        "p.toml:5:1: not a linear-time pattern: missing closing ); RE2 syntax is allowed, e.g."
            + " \"ATR-26-[0-9]{4}\"");
  }

  @Test
  void aPatternThatWouldGrowWithoutBoundsWhenCompiled() {
    faults(
        HEADER
            + "unit-pattern = \"((a{1000}){1000}){1000}\"\n"
            + ATTEST.replace("kind", "id = \"wire\"\nkind"),
        "p.toml:5:1: the pattern's repetitions multiply to more than 10000; use smaller counts");
  }

  @Test
  void aStepWithoutItsKeys() {
    faults(
        HEADER + "[[step]]\n[[step]]\nid = \"a\"\nkind = \"atest\"\ntitle = \"A\"\n",
        "p.toml:5:1: step has no \"id\"; give one of lower-case letters, digits and hyphens",
        "p.toml:5:1: step has no \"kind\"; allowed are tighten, attest, measure",
        "p.toml:5:1: step has no \"title\"; give a title for people",
        "p.toml:6:1: step has no \"statement\"; write the sentence that a person confirms",
        "p.toml:8:1: unknown kind \"atest\"; did you mean \"attest\"?");
  }

  @Test
  void aFaultyKindHidesNoOtherFaultOfItsStep() {
    faults(
        HEADER
            + "[[step]]\nid = \"a\"\nkind = \"tigthen\"\ntitle = \"A\"\ntorque = \"24 foo\"\nfastners = 2\n"
            + "[[step]]\nid = \"b\"\nkind = \"gauge\"\ntitle = \"B\"\nunit = \"mm\"\nmin = \"2\"\nmax = \"1\"\n"
            + "[[step]]\nid = \"c\"\nkind = 7\ntitle = \"C\"\nstatement = \"\"\n",
        "p.toml:5:1: step \"a\" has neither fasteners nor positions; give the number, e.g."
            + " fasteners = 4, or the positions' names",
        "p.toml:7:1: unknown kind \"tigthen\"; did you mean \"tighten\"?",
        "p.toml:9:1: torque without tolerance; give tolerance, e.g. \"10 %\", or min and max",
        "p.toml:9:14: unknown unit \"foo\"; allowed are N.m, cN.m, kgf.cm, kgf.m, lbf.ft, lbf.in,"
            + " ozf.in",
        "p.toml:10:1: unknown key \"fastners\" in step; did you mean \"fasteners\"?",
        "p.toml:13:1: unknown kind \"gauge\"; allowed are attest, measure, tighten",
        "p.toml:16:1: limits upside down: min 2 is above max 1; exchange min and max",
        "p.toml:20:1: \"kind\" is not a text in quotes; write a text in quotes",
        "p.toml:22:1: statement is blank; write what people should read");
  }

  @Test
  void aUnitWrittenWithEscapesIsPlacedAtItsKey() {
    pair(
        "torque = \"24 \\u0066oo\"\ntolerance = \"10 %\"\n",
        "p.toml:10:1: unknown unit \"foo\"; allowed are N.m, cN.m, kgf.cm, kgf.m, lbf.ft, lbf.in,"
            + " ozf.in");
  }

  @Test
  void valuesOfTheWrongType() {
    group(
        "fasteners = \"4\"\ntorque = 24\ntolerance = 10.5\nafter = \"x\"\nwrenches = [1]\n",
        "p.toml:9:1: \"fasteners\" is not a whole number; write a whole number",
        "p.toml:10:1: torque is a number without quotes; write torque = \"24 N.m\"",
        "p.toml:11:1: tolerance is a number without quotes; write tolerance = \"10 %\"",
        "p.toml:12:1: \"after\" is not a list of texts in quotes; write a list of texts in quotes",
        "p.toml:13:13: item 1 of \"wrenches\" is of the wrong kind; write a list of texts in quotes");
  }

  @Test
  void aUnitThatIsUnknownOrSpelledAnotherWay() {
    pair(
        "torque = \"17 ft-lb\"\ntolerance = \"2 NM\"\n",
        "p.toml:10:14: unknown unit \"ft-lb\"; did you mean \"lbf.ft\"?",
        "p.toml:11:16: unknown unit \"NM\"; did you mean \"N.m\"?");
    pair(
        "min = \"17 pound\"\nmax = \"20\"\n",
        "p.toml:10:11: unknown unit \"pound\"; allowed are N.m, cN.m, kgf.cm, kgf.m, lbf.ft,"
            + " lbf.in, ozf.in",
        "p.toml:11:1: \"20\" is not a torque; write number, blank, unit, e.g. \"24 lbf.ft\"");
    pair(
        "torque = \"24,5 N.m\"\ntolerance = \"10 %\"\n",
        "p.toml:10:1: \"24,5\" is not a decimal number; allowed are forms like 32.54, 5 or 1.2e1");
  }

  @Test
  void aTorqueThatIsNothingOrLessOrBeyondAnyWrench() {
    pair(
        "torque = \"0 N.m\"\ntolerance = \"10 %\"\n",
        "p.toml:10:1: torque 0 N.m is nothing; a torque above 0 is allowed");
    pair(
        "torque = \"-5 N.m\"\ntolerance = \"10 %\"\n",
        "p.toml:10:1: torque -5 is negative; 0 or more is allowed");
    pair(
        "torque = \"1e9 N.m\"\ntolerance = \"10 %\"\n",
        "p.toml:10:1: torque 1e9 N.m is too large; at most 100000 N.m is allowed");
    pair(
        "min = \"0 N.m\"\nmax = \"0.0 N.m\"\n",
        "p.toml:11:1: max 0.0 N.m is nothing; a torque above 0 is allowed");
  }

  @Test
  void aBandThatIsIncompleteOrStatedTwice() {
    pair("", "p.toml:5:1: step \"pivot\" has no torque; give torque and tolerance, or min and max");
    pair(
        "torque = \"9 N.m\"\n",
        "p.toml:10:1: torque without tolerance; give tolerance, e.g. \"10 %\", or min and max");
    pair(
        "tolerance = \"10 %\"\n",
        "p.toml:10:1: tolerance without torque; give torque, too, or min and max");
    pair("min = \"9 N.m\"\n", "p.toml:10:1: min without max; give max, too");
    pair("max = \"9 N.m\"\n", "p.toml:10:1: max without min; give min, too");
    pair(
        "torque = \"9 N.m\"\ntolerance = \"10 %\"\nmin = \"8 N.m\"\nmax = \"9 N.m\"\n",
        "p.toml:11:1: step \"pivot\" has tolerance beside min or max; give torque and tolerance,"
            + " or min and max");
  }

  @Test
  void aBandThatCannotBe() {
    pair(
        "min = \"9 N.m\"\nmax = \"8 N.m\"\n",
        "p.toml:10:1: band upside down: min 9 N.m is above max 8 N.m; exchange min and max");
    pair(
        "torque = \"7 N.m\"\nmin = \"8 N.m\"\nmax = \"9 N.m\"\n",
        "p.toml:10:1: torque 7 N.m is outside min 8 N.m to max 9 N.m; give a torque within the"
            + " limits, or other limits");
    pair(
        "torque = \"7 N.m\"\ntolerance = \"1 lbf.ft\"\n",
        "p.toml:11:1: tolerance in lbf.ft but torque in N.m; use one unit, or a tolerance in %");
    pair(
        "torque = \"7 N.m\"\ntolerance = \"8 N.m\"\n",
        "p.toml:11:1: tolerance 8 N.m is larger than the torque 7 N.m; give a smaller tolerance");
    pair(
        "torque = \"7 N.m\"\ntolerance = \"10%\"\n",
        "p.toml:11:1: \"10%\" is not a tolerance; write number, blank, %: \"10 %\"");
    pair(
        "torque = \"7 N.m\"\ntolerance = \"-1 %\"\n",
        "p.toml:11:1: tolerance -1 % is out of range; 0 to 100 % is allowed");
    pair(
        "torque = \"7 N.m\"\ntolerance = \"101 %\"\n",
        "p.toml:11:1: tolerance 101 % is out of range; 0 to 100 % is allowed");
    pair(
        "torque = \"1e-60 N.m\"\ntolerance = \"10 %\"\n",
        "p.toml:11:1: torque and tolerance give no band that can be written:"
            + " \"0.0000000000000000000000000000000000000000000000000000000000009\" is not a"
            + " decimal number; allowed are forms like 32.54, 5 or 1.2e1; use fewer digits");
  }

  @Test
  void anAngleWindowThatCannotBe() {
    String band = "min = \"8 N.m\"\nmax = \"9 N.m\"\n";
    pair(
        band + "angle-min = \"20\"\n",
        "p.toml:12:1: angle-min without angle-max; give both or neither");
    pair(
        band + "angle-max = \"20\"\n",
        "p.toml:12:1: angle-max without angle-min; give both or neither");
    pair(
        band + "angle-min = \"70\"\nangle-max = \"20\"\n",
        "p.toml:12:1: angle window upside down: angle-min 70 is above angle-max 20; exchange"
            + " angle-min and angle-max");
    pair(
        band + "angle-min = \"-5\"\nangle-max = 70\n",
        "p.toml:12:1: angle-min -5 is negative; 0 degrees or more is allowed",
        "p.toml:13:1: angle-max is a number without quotes; write angle-max = \"70\"");
  }

  @Test
  void passesThatContradictTheStepOrEachOther() {
    pair(
        """
        torque = "9 N.m"
        tolerance = "10 %"
        [[step.pass]]
        name = "snug"
        min = "8 N.m"
        max = "9 N.m"
        [[step.pass]]
        name = "snug"
        tolerence = "10 %"
        [[step.pass]]
        name = "Final pass"
        min = "8 N.m"
        max = "9 N.m"
        """,
        "p.toml:12:1: step \"pivot\" has torque or angle of its own and passes; move torque,"
            + " tolerance, min, max, angle-min and angle-max into the passes",
        "p.toml:16:1: pass \"snug\" has no torque; give torque and tolerance, or min and max",
        "p.toml:17:1: pass name \"snug\" is used twice in a step, first on line 13; give each pass"
            + " a name of its own",
        "p.toml:18:1: unknown key \"tolerence\" in pass; did you mean \"tolerance\"?",
        "p.toml:20:1: pass name \"Final pass\" is malformed; 1 to 64 lower-case letters, digits"
            + " and hyphens are allowed");
  }

  @Test
  void aPassListThatIsEmptyOrNoList() {
    pair("pass = []\n", "p.toml:10:1: pass holds no pass; write passes as [[step.pass]]");
    pair(
        "pass = [1]\n",
        "p.toml:10:1: pass holds no pass; write passes as [[step.pass]]",
        "p.toml:10:9: pass is not a table; write it as [[pass]]");
  }

  @Test
  void morePassesThanAnybodyMakes() {
    StringBuilder passes = new StringBuilder();
    for (int i = 0; i < 21; i++) {
      passes.append("[[step.pass]]\nname = \"p").append(i).append("\"\n");
      passes.append("min = \"8 N.m\"\nmax = \"9 N.m\"\n");
    }
    pair(passes.toString(), "p.toml:10:1: step \"pivot\" has 21 passes; at most 20 are allowed");
  }

  @Test
  void anIdThatIsMalformedOrUsedTwice() {
    faults(
        HEADER
            + ATTEST
            + "id = \"Wire\"\n"
            + ATTEST
            + "id = \"wire\"\n"
            + ATTEST
            + "id = \"wire\"\n",
        "p.toml:9:1: step id \"Wire\" is malformed; 1 to 64 lower-case letters, digits and hyphens"
            + " are allowed",
        "p.toml:19:1: step id \"wire\" is used twice, first on line 14; give each step an id of"
            + " its own");
  }

  @Test
  void fastenersThatAreNotSaidOrSaidTwice() {
    order(
        "",
        "p.toml:5:1: step \"pivot\" has neither fasteners nor positions; give the number, e.g."
            + " fasteners = 4, or the positions' names");
    order(
        "fasteners = 2\npositions = [\"a\", \"b\"]\n",
        "p.toml:11:1: both fasteners and positions are given; give the number or the names");
    order("fasteners = 0\n", "p.toml:11:1: fasteners 0 is out of range; 1 to 500 is allowed");
    order("fasteners = 501\n", "p.toml:11:1: fasteners 501 is out of range; 1 to 500 is allowed");
  }

  @Test
  void positionsThatCannotBeToldApart() {
    order(
        "positions = []\n",
        "p.toml:11:1: positions is an empty list; name at least one, or leave positions out");
    order(
        "positions = [\"a\", \"a\", \"\"]\n",
        "p.toml:11:19: position \"a\" is named twice; give each a name of its own",
        "p.toml:11:24: position \"\" is malformed; 1 to 64 printable characters without blanks at"
            + " the ends are allowed");
    order(
        "positions = [\"a/1\", \"a:1\"]\n",
        "p.toml:11:14: position \"a/1\" holds / or :; leave them out; they part step, position and"
            + " pass",
        "p.toml:11:21: position \"a:1\" holds / or :; leave them out; they part step, position and"
            + " pass");
    String longest = "x".repeat(59);
    order(
        "positions = [\"" + longest + "\"]\n",
        "p.toml:11:14: the fastener's full name \"pivot/"
            + longest
            + "\" is too long; at most 64 characters are allowed for step and position");
  }

  @Test
  void anOrderThatIsUnknownOrAtOddsWithThePattern() {
    order(
        "fasteners = 4\norder = \"patern\"\n",
        "p.toml:12:1: unknown order \"patern\"; did you mean \"pattern\"?");
    order(
        "fasteners = 4\norder = \"pattern\"\n",
        "p.toml:12:1: order is \"pattern\" but there is no pattern; give each position once,"
            + " counted from 1, e.g. pattern = [1, 3, 2, 4]");
    order(
        "fasteners = 4\npattern = [1, 3, 2, 4]\n",
        "p.toml:12:1: pattern without order = \"pattern\"; give order = \"pattern\", or take"
            + " pattern out");
  }

  @Test
  void aPatternThatSkipsRepeatsOrLeavesTheGroup() {
    order(
        "fasteners = 4\norder = \"pattern\"\npattern = [1, 3, 3, 5]\n",
        "p.toml:13:1: pattern skips position 2 and 4; give each of 1 to 4 once",
        "p.toml:13:18: pattern names position 3 twice; give each position once",
        "p.toml:13:21: pattern names position 5, which the group has not; 1 to 4 are allowed");
  }

  @Test
  void aPasssOwnOrderHasTheSameFaultsEvenBesideOthers() {
    pair(
        """
        [[step.pass]]
        name = "final"
        min = "8 N.m"
        max = "9 N.m"
        [[step.pass]]
        name = "check"
        min = "9 N.m"
        max = "8 N.m"
        check = true
        order = "pattern"
        pattern = [1, 1]
        """,
        "p.toml:16:1: band upside down: min 9 N.m is above max 8 N.m; exchange min and max",
        "p.toml:20:1: pattern skips position 2; give each of 1 to 2 once",
        "p.toml:20:15: pattern names position 1 twice; give each position once");
  }

  @Test
  void wordsOfATightenStepThatAreUnknownOrMalformed() {
    order(
        "fasteners = 1\n"
            + "criticality = \"dangerous\"\nwrenches = []\nthread = \"\"\nstatement = \"x\"\n",
        "p.toml:12:1: unknown criticality \"dangerous\"; did you mean \"danger\"?",
        "p.toml:13:1: wrenches is an empty list; name at least one, or leave wrenches out",
        "p.toml:14:1: thread \"\" is malformed; 1 to 64 printable characters without blanks at the"
            + " ends are allowed",
        "p.toml:15:1: unknown key \"statement\" in step; allowed are acceptance, adapter, after, angle-max, angle-min, angle-scatter,"
            + " criticality, fasteners, guard, id, kind, max, min, note, order, pass, pattern, picture,"
            + " positions, property-class, recheck-angle, seconds-between, single-use, steps-in-band, surface, thread, title,"
            + " tolerance, torque, tries and 2 more");
  }

  @Test
  void aSecondHitIsToldByNumbersInTheirRanges() {
    order(
        "fasteners = 1\nrecheck-angle = \"-1\"\nangle-scatter = \"0\"\nseconds-between = \"61\"\n",
        "p.toml:12:1: recheck-angle -1 is out of range; 0 to 90 is allowed",
        "p.toml:13:1: angle-scatter 0 is out of range; 0.1 to 100 is allowed",
        "p.toml:14:1: seconds-between 61 is out of range; 0 to 60 is allowed");
  }

  @Test
  void whatMayFollowABadTighteningIsAYesAndASmallNumber() {
    order(
        "fasteners = 1\nsingle-use = \"yes\"\ntries = 0\n",
        "p.toml:12:1: \"single-use\" is not true or false; write true or false",
        "p.toml:13:1: tries 0 is out of range; 1 to 20 is allowed");
    order(
        "fasteners = 1\ntries = \"3\"\n",
        "p.toml:12:1: \"tries\" is not a whole number; write a whole number");
    faults(
        HEADER + ATTEST + "id = \"wire\"\nrenew = 1\ntries = 3\n",
        "p.toml:10:1: \"renew\" is not true or false; write true or false",
        "p.toml:11:1: unknown key \"tries\" in step; allowed are after, id, kind, note, picture, renew,"
            + " statement, title");
  }

  @Test
  void anAttestStepWithoutItsStatement() {
    faults(
        HEADER + "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\nnote = \"\"\n",
        "p.toml:5:1: step has no \"statement\"; write the sentence that a person confirms",
        "p.toml:9:1: note is blank; write what people should read");
  }

  @Test
  void aMeasureStepThatAsksForNothingPossible() {
    measure(
        "",
        "p.toml:5:1: step has no \"unit\"; give the unit that people read, e.g. \"mm\"",
        "p.toml:5:1: step has no \"min\"; give the limit, e.g. min = \"8\"",
        "p.toml:5:1: step has no \"max\"; give the limit, e.g. max = \"8\"");
    measure(
        "unit = \"mm\"\nmin = \"12\"\nmax = \"8\"\nspread = \"-1\"\nlabels = [\"a\", \"a\"]\n",
        "p.toml:10:1: limits upside down: min 12 is above max 8; exchange min and max",
        "p.toml:12:1: spread -1 is negative; 0 or more is allowed",
        "p.toml:13:16: label \"a\" is named twice; give each a name of its own");
    measure(
        "unit = \"mm\"\nmin = 8\nmax = 12.5\n",
        "p.toml:10:1: min is a number without quotes; write min = \"8\"",
        "p.toml:11:1: max is a number without quotes; write max = \"8\"");
  }

  @Test
  void moreStepsThanAllowed() {
    StringBuilder steps = new StringBuilder(HEADER);
    for (int i = 0; i < 501; i++) {
      steps.append(ATTEST).append("id = \"s").append(i).append("\"\n");
    }
    faults(
        steps.toString(),
        "p.toml:2506:1: the procedure has 501 steps; at most 500 are allowed; split it");
  }

  @Test
  void aFileBeyondItsSize() {
    faults(
        "#".repeat((1 << 20) + 1),
        "p.toml:1:1: the file is of 1048577 characters; at most 1048576 are allowed");
  }
}
