package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static witnessmark.sight.Visibility.ASKED;
import static witnessmark.sight.Visibility.NOT_SEEN;
import static witnessmark.sight.Visibility.SEEN;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.procedure.ProcedureFile;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Rack;
import witnessmark.sight.Sight;
import witnessmark.sight.Visibility;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** Makes each mistake for real: the record shows of it what was announced. */
class SightOnBenchTest {
  private static final String WINDOW = "angle-min = \"20\"\nangle-max = \"70\"";
  private static final String FREE = "after = []";

  private Bench bench;
  private String text;
  private Ability ability;

  private void on(String procedure, Ability wrench) {
    text = procedure;
    ability = wrench;
    bench = Bench.on(procedure);
  }

  private void group(Ability wrench, int n, String... lines) {
    on(Bench.group(n, lines), wrench);
  }

  /** A pull on a fastener; the reading carries what the wrench shows of it. */
  private Judged pull(String fastener, String torque, String angle) {
    return pull("TW-1", fastener, torque, angle, "5");
  }

  private Judged pull(String wrench, String at, String torque, String angle, String breakaway) {
    TorqueEvent event =
        bench.event(
            wrench,
            torque + " N.m",
            ability.angle() ? angle : "",
            Direction.CW,
            ability.position() ? at : "");
    TorqueEvent shown =
        new TorqueEvent(
            event.wrench(),
            event.number(),
            event.time(),
            event.torque(),
            event.angle(),
            ability.breakaway() ? Optional.of(Torque.parse(breakaway + " N.m")) : Optional.empty(),
            Direction.CW,
            event.fastener(),
            Optional.empty());
    return ((Entry.TorqueTaken) bench.take(shown).entries().get(0)).judged();
  }

  /** A hit on a tight one: it breaks away near its torque and hardly turns. */
  private Judged again(String fastener, String torque, String angle) {
    return pull("TW-1", fastener, torque, angle, "47");
  }

  /** What an entry shows of a pull that may be credited to one fastener only, or to none. */
  private static Visibility shown(Judged judged, String rightful) {
    if (judged.effect() == Effect.ASKS) {
      return ASKED;
    }
    boolean wrong =
        judged.effect() == Effect.CREDITED && !judged.fastener().equals(named(rightful));
    return wrong ? NOT_SEEN : SEEN;
  }

  private static Optional<String> named(String fastener) {
    return fastener.isEmpty() ? Optional.empty() : Optional.of(fastener);
  }

  private Announced said(Mistake mistake, String stage) {
    Rack rack = Rack.of(Map.of("TW-1", ability, "TW-2", ability));
    return Sight.of(ProcedureFile.parse("test.toml", text), rack).stream()
        .filter(a -> a.mistake() == mistake && stage.equals(a.step() + ":" + a.pass()))
        .findFirst()
        .orElseThrow();
  }

  private void so(Visibility expected, Mistake mistake, String stage, Judged judged, String right) {
    assertThat(shown(judged, right)).as("the record: %s", judged.text()).isEqualTo(expected);
    announcedSo(expected, mistake, stage);
  }

  private void announcedSo(Visibility expected, Mistake mistake, String stage) {
    assertThat(said(mistake, stage).visibility()).as("announced").isEqualTo(expected);
  }

  private static String passes(String... namesAndTorques) {
    StringBuilder lines = new StringBuilder();
    for (int i = 0; i < namesAndTorques.length; i += 2) {
      lines
          .append("[[step.pass]]\nname = \"")
          .append(namesAndTorques[i])
          .append("\"\ntorque = \"")
          .append(namesAndTorques[i + 1])
          .append(" N.m\"\ntolerance = \"10 %\"\n")
          .append(namesAndTorques[i].equals("check") ? "check = true\n" : "");
    }
    return lines.toString();
  }

  private static String single(String id, String torque, String... more) {
    return Bench.step(id, 1, String.join("\n", more) + "\n" + passes("final", torque));
  }

  @Test
  void aHiddenSkipLeavesNoTraceInTorqueAlone() {
    group(Ability.TORQUE_ONLY, 3);
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
    pull("a/3", "50", "30");
    assertThat(bench.job().complete()).as("a/2 was never pulled").isTrue();
  }

  @Test
  void aHiddenSkipIsAskedAboutByAngleUntilTheGroupHasShownItsTurn() {
    group(Ability.ANGLE, 3);
    pull("a/1", "50", "9");
    so(ASKED, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "4"), "");
  }

  @Test
  void aHiddenSkipIsAskedAboutWhereTheWindowBeginsBelowTheRecheckAngle() {
    group(Ability.ANGLE, 3, "angle-min = \"3\"\nangle-max = \"70\"");
    pull("a/1", "50", "9");
    so(ASKED, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "4"), "");
  }

  @Test
  void aHiddenSkipIsSeenByAWindowAPositionOrTheBreakaway() {
    group(Ability.ANGLE, 3, WINDOW);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "5"), "");
    group(Ability.POSITION, 3);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
    group(Ability.BREAKAWAY, 3);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
  }

  @Test
  void whereTheRecheckAngleIs0TheAngleHidesIt() {
    group(Ability.ANGLE, 3, "recheck-angle = \"0\"");
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
  }

  @Test
  void inACheckPassASecondHitLooksLikeTheNextCheck() {
    group(Ability.ANGLE, 3, passes("final", "50", "check", "50"));
    for (int i = 1; i <= 3; i++) {
      pull("a/" + i, "50", "30");
    }
    again("a/1", "50", "1.5");
    so(NOT_SEEN, Mistake.HIDDEN_SKIP, "a:check", again("a/1", "50", "1.5"), "");
  }

  @Test
  void theBreakawayIsHiddenByAnEarlierPassNearlyAsTight() {
    group(Ability.BREAKAWAY, 2, passes("snug", "40", "final", "50"));
    pull("TW-1", "a/1", "40", "", "3");
    pull("TW-1", "a/2", "40", "", "3");
    pull("TW-1", "a/1", "50", "", "41");
    so(NOT_SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
    announcedSo(SEEN, Mistake.HIDDEN_SKIP, "a:snug");
  }

  @Test
  void oneThatIsLeftOutStaysPending() {
    group(Ability.TORQUE_ONLY, 2);
    pull("a/1", "50", "30");
    announcedSo(SEEN, Mistake.SKIP, "a:final");
    assertThat(bench.job().complete()).isFalse();
  }

  @Test
  void aDoubleHitCountsForTheNextInTorqueAloneIsAskedByAngleSeenByWindow() {
    group(Ability.TORQUE_ONLY, 2);
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "2"), "");
    group(Ability.ANGLE, 2);
    pull("a/1", "50", "9");
    so(ASKED, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "4"), "");
    group(Ability.ANGLE, 2, WINDOW);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "2"), "");
  }

  @Test
  void aDoubleHitOnASingleOneCountsForALaterStepOfTheSameTorqueOnly() {
    group(Ability.TORQUE_ONLY, 1);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "2"), "");
    on(Bench.group(1) + single("b", "30"), Ability.TORQUE_ONLY);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "2"), "");
    on(Bench.group(1) + single("b", "50"), Ability.TORQUE_ONLY);
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/1", "50", "2"), "");
  }

  @Test
  void aDoubleHitIsWhatTheCheckAfterItExpects() {
    group(Ability.ANGLE, 2, passes("final", "50", "check", "50"));
    pull("a/1", "50", "30");
    pull("a/2", "50", "30");
    so(NOT_SEEN, Mistake.DOUBLE_HIT, "a:final", again("a/2", "50", "2"), "");
  }

  @Test
  void afterAnUnderTorqueASecondHitElsewherePassesForTheRest() {
    group(Ability.TORQUE_ONLY, 2);
    pull("a/1", "50", "30");
    pull("a/2", "44", "24");
    so(NOT_SEEN, Mistake.AGAIN_AFTER_UNDER, "a:final", again("a/1", "50", "2"), "");
    group(Ability.ANGLE, 2, WINDOW);
    pull("a/1", "50", "30");
    pull("a/2", "44", "24");
    so(NOT_SEEN, Mistake.AGAIN_AFTER_UNDER, "a:final", again("a/1", "50", "2"), "");
    group(Ability.POSITION, 2);
    pull("a/1", "50", "30");
    pull("a/2", "44", "24");
    so(SEEN, Mistake.AGAIN_AFTER_UNDER, "a:final", again("a/1", "50", "2"), "");
  }

  @Test
  void exchangedLookAlikesAreToldByPositionsOnly() {
    for (String order : new String[] {"strict", "any"}) {
      group(Ability.ANGLE, 2, "order = \"" + order + "\"", WINDOW);
      so(NOT_SEEN, Mistake.EXCHANGED, "a:final", pull("a/2", "50", "30"), "a/2");
      group(Ability.POSITION, 2, "order = \"" + order + "\"");
      so(SEEN, Mistake.EXCHANGED, "a:final", pull("a/2", "50", "30"), "a/2");
    }
  }

  @Test
  void anotherOpenGroupOfTheSameTorqueIsAskedAboutUnlessWindowsPartThem() {
    on(Bench.group(2) + Bench.step("b", 2, FREE), Ability.ANGLE);
    so(ASKED, Mistake.WRONG_GROUP, "a:final", pull("b/1", "50", "30"), "b/1");
    on(
        Bench.group(2, "angle-min = \"20\"\nangle-max = \"40\"")
            + Bench.step("b", 2, FREE, "angle-min = \"100\"\nangle-max = \"200\""),
        Ability.ANGLE);
    so(SEEN, Mistake.WRONG_GROUP, "a:final", pull("b/1", "50", "150"), "b/1");
    on(Bench.group(2) + single("b", "30", FREE), Ability.TORQUE_ONLY);
    so(SEEN, Mistake.WRONG_GROUP, "a:final", pull("b/1", "30", "30"), "b/1");
  }

  @Test
  void whereOnlyTheWrenchPartsOpenGroupsTheWrongOneCounts() {
    on(
        Bench.group(2, "wrenches = [\"TW-1\"]") + Bench.step("b", 2, FREE, "wrenches = [\"TW-2\"]"),
        Ability.ANGLE);
    so(NOT_SEEN, Mistake.WRONG_GROUP, "a:final", pull("b/1", "50", "30"), "b/1");
  }

  @Test
  void anAdapterMakesOtherBandsAlikeAtTheDrive() {
    String adapter = "adapter = { lever = \"300 mm\", offset = \"75 mm\" }";
    // 50 at the fastener is 40 on the display
    on(Bench.group(1, adapter) + single("b", "40", FREE), Ability.TORQUE_ONLY);
    so(ASKED, Mistake.WRONG_GROUP, "a:final", pull("b/1", "40", "30"), "b/1");
    on(Bench.group(1, adapter) + single("b", "50", FREE), Ability.TORQUE_ONLY);
    so(SEEN, Mistake.WRONG_GROUP, "a:final", pull("b/1", "50", "30"), "b/1");
  }

  @Test
  void oneThatIsPulledTooEarlyCountsWhereTheTorqueIsTheSame() {
    on(Bench.group(2) + single("b", "50"), Ability.ANGLE);
    so(NOT_SEEN, Mistake.TOO_EARLY, "a:final", pull("b/1", "50", "30"), "b/1");
    on(Bench.group(2) + single("b", "30"), Ability.TORQUE_ONLY);
    so(SEEN, Mistake.TOO_EARLY, "a:final", pull("b/1", "30", "30"), "b/1");
    on(Bench.group(2) + single("b", "70"), Ability.TORQUE_ONLY);
    so(ASKED, Mistake.TOO_EARLY, "a:final", pull("b/1", "70", "30"), "b/1");
    on(Bench.group(2) + single("b", "50"), Ability.POSITION);
    so(SEEN, Mistake.TOO_EARLY, "a:final", pull("b/1", "50", "30"), "");
  }

  @Test
  void theFinalTorqueInTheSnugPassIsAskedAbout() {
    group(Ability.TORQUE_ONLY, 2, passes("snug", "30", "final", "50"));
    pull("a/1", "30", "30");
    so(ASKED, Mistake.TOO_EARLY, "a:snug", pull("a/1", "50", "30"), "");
  }

  @Test
  void oneOfAnotherGroupAtThisTorqueCountsHere() {
    on(Bench.group(2) + single("b", "30"), Ability.ANGLE);
    so(NOT_SEEN, Mistake.WRONG_PLACE, "a:final", pull("b/1", "50", "30"), "");
    on(Bench.group(2) + single("b", "30"), Ability.POSITION);
    so(SEEN, Mistake.WRONG_PLACE, "a:final", pull("b/1", "50", "30"), "");
    on(Bench.group(1, passes("final", "50", "check", "50")) + single("b", "30"), Ability.ANGLE);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.WRONG_PLACE, "a:check", pull("b/1", "50", "30"), "");
  }

  @Test
  void tooLittleTorqueCountsForAnOpenGroupThatTakesSoLittle() {
    group(Ability.TORQUE_ONLY, 2);
    so(SEEN, Mistake.UNDER, "a:final", pull("a/1", "30", "20"), "");
    on(Bench.group(2) + single("b", "30"), Ability.TORQUE_ONLY);
    so(SEEN, Mistake.UNDER, "a:final", pull("a/1", "30", "20"), "");
    on(Bench.group(2) + single("b", "30", FREE), Ability.ANGLE);
    so(NOT_SEEN, Mistake.UNDER, "a:final", pull("a/1", "30", "20"), "");
    on(Bench.group(2) + single("b", "30", FREE), Ability.POSITION);
    so(SEEN, Mistake.UNDER, "a:final", pull("a/1", "30", "20"), "");
  }

  @Test
  void tooMuchOnATightOneIsFlaggedByTorqueAndAskedAboutByAngle() {
    group(Ability.TORQUE_ONLY, 2);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.OVER, "a:final", again("a/1", "60", "3"), "");
    group(Ability.ANGLE, 2, WINDOW);
    pull("a/1", "50", "30");
    so(ASKED, Mistake.OVER, "a:final", again("a/1", "56", "3"), "");
  }

  @Test
  void tooMuchOnATightOneCountsForALaterOneThatTakesSoMuch() {
    for (Ability wrench : new Ability[] {Ability.TORQUE_ONLY, Ability.ANGLE}) {
      on(Bench.group(1) + single("b", "70"), wrench);
      pull("a/1", "50", "30");
      so(NOT_SEEN, Mistake.OVER, "a:final", again("a/1", "66", "3"), "");
    }
    String near = "[[step.pass]]\nname = \"final\"\nmin = \"56 N.m\"\nmax = \"56.2 N.m\"\n";
    on(Bench.group(1) + Bench.step("b", 1, near), Ability.ANGLE);
    pull("a/1", "50", "30");
    so(ASKED, Mistake.OVER, "a:final", again("a/1", "56", "3"), "");
  }

  @Test
  void aCrossedThreadIsSeenByAWindowOnly() {
    group(Ability.TORQUE_ONLY, 2);
    so(NOT_SEEN, Mistake.CROSS_THREADED, "a:final", pull("a/1", "50", "8"), "");
    group(Ability.ANGLE, 2);
    so(NOT_SEEN, Mistake.CROSS_THREADED, "a:final", pull("a/1", "50", "8"), "");
    group(Ability.ANGLE, 2, WINDOW);
    so(SEEN, Mistake.CROSS_THREADED, "a:final", pull("a/1", "50", "8"), "");
  }

  @Test
  void aMissingWasherThatLeavesTheAngleInItsWindowIsNotSeen() {
    group(Ability.ANGLE, 1, WINDOW);
    so(NOT_SEEN, Mistake.MISSING_WASHER, "a:final", pull("a/1", "50", "25"), "");
  }

  @Test
  void oneThatWasTightBeforeIsSeenByAWindowAndAskedAboutBesideTightOnes() {
    group(Ability.TORQUE_ONLY, 2);
    so(NOT_SEEN, Mistake.TIGHT_BEFORE, "a:final", again("a/1", "50", "2"), "");
    group(Ability.ANGLE, 2);
    so(NOT_SEEN, Mistake.TIGHT_BEFORE, "a:final", again("a/1", "50", "2"), "");
    group(Ability.ANGLE, 2, WINDOW);
    so(SEEN, Mistake.TIGHT_BEFORE, "a:final", again("a/1", "50", "2"), "");
    on(Bench.group(1) + single("b", "50"), Ability.ANGLE);
    pull("a/1", "50", "30");
    so(ASKED, Mistake.TIGHT_BEFORE, "b:final", again("b/1", "50", "2"), "");
    on(Bench.group(1) + single("b", "50"), Ability.BREAKAWAY);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.TIGHT_BEFORE, "b:final", again("b/1", "50", "2"), "");
  }

  @Test
  void aCheckByAnotherRouteTightensWhatASecondHitHadHidden() {
    String reversed = "order = \"pattern\"\npattern = [3, 2, 1]\n";
    group(Ability.TORQUE_ONLY, 3, passes("final", "50", "check", "50") + reversed);
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.HIDDEN_SKIP, "a:final", again("a/1", "50", "2"), "");
    pull("a/3", "50", "30");
    for (String fastener : List.of("a/3", "a/2", "a/1")) {
      Judged checked = pull(fastener, "50", fastener.equals("a/2") ? "30" : "2");
      assertThat(checked.fastener()).contains(fastener);
      assertThat(checked.effect()).isEqualTo(Effect.CREDITED);
    }
    assertThat(bench.job().complete()).as("and all three were pulled").isTrue();
    assertThat(said(Mistake.HIDDEN_SKIP, "a:final").sentence())
        .isEqualTo(
            "the torque is the same; an angle or a position with each reading would show it. The"
                + " check, in its other order, tightens it all the same");
  }

  @Test
  void anAngleFindsTheOneThatASecondHitHadHiddenByNameInTheCheck() {
    String reversed = "order = \"pattern\"\npattern = [3, 2, 1]\n";
    group(Ability.ANGLE, 3, passes("final", "50", "check", "50") + reversed);
    for (int i = 1; i <= 3; i++) {
      pull("a/" + i, "50", "30");
    }
    again("a/3", "50", "2");
    Judged loose = pull("a/2", "50", "30");
    assertThat(loose.fastener()).contains("a/2");
    assertThat(loose.effect()).isEqualTo(Effect.NONCONFORMING);
  }

  @Test
  void aLooseOneIsFoundByTheAngleOfACheckAndMendedByItsTorque() {
    String lines = passes("final", "50", "check", "50");
    group(Ability.ANGLE, 1, lines);
    pull("a/1", "50", "30");
    so(SEEN, Mistake.LOOSE_AT_CHECK, "a:check", pull("a/1", "50", "25"), "");
    group(Ability.TORQUE_ONLY, 1, lines);
    pull("a/1", "50", "30");
    so(NOT_SEEN, Mistake.LOOSE_AT_CHECK, "a:check", pull("a/1", "50", "25"), "");
  }
}
