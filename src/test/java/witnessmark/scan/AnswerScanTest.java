package witnessmark.scan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.entry.Reason;
import witnessmark.pipeline.Bench;

/** A question is answered by two scans in a row; a position alone never answers one. */
class AnswerScanTest {
  private static final String LATE =
      "Nothing was done: something came between wm:answer and this, or more than 2 minutes."
          + " Scan wm:answer again, or only this again.";

  private final Bench bench = Bench.on(Bench.group(2) + Bench.step("b", 2, "after = []"));

  @BeforeEach
  void aReadingAsks() {
    bench.scan("badge-07");
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.SEVERAL_POSSIBLE);
    assertThat(bench.job().questions()).containsExactly(8L);
  }

  private Entry last() {
    return bench.log().get(bench.log().size() - 1);
  }

  @Test
  void theCommandAndThenThePositionAnswer() {
    Entry.Scan question = bench.scanned("wm:answer");
    assertThat(question.meaning()).isEqualTo(Meaning.QUESTION);
    assertThat(question.question()).hasValue(8);
    assertThat(question.text())
        .isEqualTo(
            "Entry 8, 50 N.m by TW-1, was on which fastener? Scan its position within 2 minutes,"
                + " or wm:set-aside if on none.");
    Entry.Scan answer = bench.scanned("b/1");
    assertThat(answer.meaning()).isEqualTo(Meaning.ANSWER);
    assertThat(answer.fastener()).as("it names no next reading").isEmpty();
    assertThat(answer.text())
        .isEqualTo(
            "Entry 8 answered. b/1 (final pass): 50 N.m is in the band of 45 to 55 N.m. Credited."
                + " A person says that it was this one.");
    Entry.Assigned assigned = (Entry.Assigned) last();
    assertThat(assigned.assigns()).isEqualTo(8);
    assertThat(assigned.by()).isEqualTo("badge-07");
    assertThat(assigned.because()).isEqualTo("scanned at bench-1 as the answer");
    assertThat(bench.job().questions()).isEmpty();
    assertThat(bench.job().condition(2).done()).isEqualTo(1);
    assertThat(bench.job().named()).isEmpty();
    // the announcement held for one position
    assertThat(bench.scanned("a/1").meaning()).isEqualTo(Meaning.FASTENER);
  }

  @Test
  void aPositionAloneNamesTheNextReadingAndAnswersNothing() {
    assertThat(bench.scanned("b/1").meaning()).isEqualTo(Meaning.FASTENER);
    assertThat(bench.job().questions()).containsExactly(8L);
    assertThat(bench.hit("50 N.m").judged().reason()).isEqualTo(Reason.NAMED_BY_SCAN);
  }

  @Test
  void aReadingThatWasOnNothingIsSetAside() {
    assertThat(bench.scanned("wm:set-aside").text())
        .isEqualTo(
            "Scan wm:answer first, which tells the reading that it is about; then wm:set-aside.");
    bench.scan("wm:answer");
    Entry.Scan aside = bench.scanned("wm:set-aside");
    assertThat(aside.meaning()).isEqualTo(Meaning.SET_ASIDE);
    assertThat(aside.text())
        .isEqualTo("Entry 8 counts for no fastener. Next: a/1, final pass, 50 N.m (45 to 55 N.m).");
    assertThat(((Entry.SetAside) last()).sets()).isEqualTo(8);
    assertThat(bench.job().questions()).isEmpty();
  }

  @Test
  void whateverCameInBetweenMakesAPositionDoNothingOnce() {
    List<Runnable> between =
        List.of(
            () -> bench.hitOn("a/1", "50 N.m"),
            () -> bench.scan("badge-07"),
            () -> bench.scan("4012345678901"),
            () -> bench.scan("wm:status"),
            () -> bench.rest(120));
    for (Runnable thing : between) {
      bench.scan("wm:answer");
      thing.run();
      Entry.Scan late = bench.scanned("b/1");
      assertThat(late.meaning()).isEqualTo(Meaning.DECLINED);
      assertThat(late.text()).isEqualTo(LATE);
      assertThat(late.question()).hasValue(8);
      assertThat(last()).isEqualTo(late);
      assertThat(bench.job().named()).isEmpty();
      assertThat(bench.job().answering()).isEmpty();
    }
    assertThat(bench.job().questions()).containsExactly(8L);
    assertThat(bench.scanned("b/1").meaning()).isEqualTo(Meaning.FASTENER);
  }

  @Test
  void theOldestOfSeveralQuestionsComesFirstAndTheOthersAreCounted() {
    bench.hit("51 N.m");
    assertThat(bench.scanned("wm:answer").text())
        .isEqualTo(
            "Entry 8, 50 N.m by TW-1, was on which fastener? Scan its position within 2 minutes,"
                + " or wm:set-aside if on none. (1 more ask after it.)");
    bench.scan("a/1");
    assertThat(bench.scanned("wm:answer").question()).hasValue(9);
  }

  @Test
  void anotherPersonsPositionIsNoAnswer() {
    bench.scan(Bench.STATION, "wm:answer", Optional.of("badge-07"), false);
    assertThat(
            ((Entry.Scan)
                    bench
                        .scan(Bench.STATION, "b/1", Optional.of("badge-08"), false)
                        .entries()
                        .get(0))
                .meaning())
        .isEqualTo(Meaning.FASTENER);
    assertThat(bench.job().questions()).containsExactly(8L);
  }

  @Test
  void whatIsAnsweredMeanwhileIsNotAnsweredAgain() {
    bench.scan("wm:answer");
    bench.person(
        new Assign(
            8,
            (Entry.TorqueTaken) bench.log().get(8),
            "J-5",
            Optional.of("a/1"),
            "badge-07",
            "seen"));
    Entry.Scan again = bench.scanned("b/1");
    assertThat(again.meaning()).isEqualTo(Meaning.DECLINED);
    assertThat(again.text()).isEqualTo("Entry 8 was assigned or set aside already.");
    assertThat(bench.scanned("wm:answer").text())
        .isEqualTo(
            "No reading of J-5 asks for its fastener. Next: a/2, final pass, 50 N.m"
                + " (45 to 55 N.m).");
  }

  @Test
  void nobodyAnswersNothing() {
    Bench nobody = Bench.on(Bench.group(2) + Bench.step("b", 2, "after = []"));
    nobody.hit("50 N.m");
    Entry.Scan scan = nobody.scanned("wm:answer");
    assertThat(scan.meaning()).isEqualTo(Meaning.DECLINED);
    assertThat(scan.text())
        .isEqualTo("Nobody is known at bench-1 to answer: scan your badge, then wm:answer.");
    assertThat(nobody.scanned("b/1").meaning()).isEqualTo(Meaning.FASTENER);
  }

  @Test
  void theLogAloneGivesTheSameAnnouncement() {
    bench.scan("wm:answer");
    assertThat(bench.replayed().jobs().get("J-5").answering())
        .isPresent()
        .isEqualTo(bench.job().answering());
    bench.hit("50 N.m");
    assertThat(bench.replayed().jobs().get("J-5").answering())
        .isPresent()
        .isEqualTo(bench.job().answering());
  }
}
