package witnessmark.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.job.Due;
import witnessmark.pipeline.Bench;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Digits;

/** What people are told when the answer is no. */
class DeclinedTest {
  private static final Optional<String> NOBODY = Optional.empty();
  private static final String GATES =
      "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\nstatement = \"Fitted.\"\n"
          + "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nunit = \"mm\"\n"
          + "min = \"1\"\nmax = \"2\"\nafter = []\n";

  private final Bench bench = Bench.on(Bench.group(2) + GATES);

  private void declined(Command command, String why) {
    long size = bench.size();
    assertThatThrownBy(() -> bench.person(command)).isInstanceOf(Declined.class).hasMessage(why);
    assertThat(bench.size()).as("nothing goes on record").isEqualTo(size);
  }

  @Test
  void anIncompleteJobCannotBeClosedAndEverythingMissingIsListed() {
    bench.hit("50 N.m");
    declined(
        new CloseJob(bench.jobName(), NOBODY),
        "Job J-5 cannot be closed yet. Missing:\n  a/2: final pass\n"
            + "  wire, Wire: not due yet\n"
            + "  gap, Gap: witnessmark measure J-5 gap NUMBER --by BADGE");
  }

  @Test
  void everythingThatAPersonCanDoNowIsListedWithItsCommand() {
    bench.hitOn("a/1", "60 N.m");
    assertThat(Due.of(bench.job()).text())
        .isEqualTo(
            "a/1 is nonconforming: leave it as it is until somebody has decided (dispose)."
                + " 1 more thing waits for a person (job status J-5).");
    assertThat(Awaited.of(bench.job()))
        .extracting(Awaited::command)
        .containsExactly(
            "witnessmark dispose J-5 a/1 --as DECISION --by BADGE --because WHY",
            "witnessmark measure J-5 gap NUMBER --by BADGE");
    declined(
        new CloseJob(bench.jobName(), NOBODY),
        "Job J-5 cannot be closed yet. Missing:\n"
            + "  a/1 is nonconforming since entry 6: witnessmark dispose J-5 a/1 --as DECISION"
            + " --by BADGE --because WHY\n"
            + "  a/2: final pass\n"
            + "  wire, Wire: not due yet\n"
            + "  gap, Gap: witnessmark measure J-5 gap NUMBER --by BADGE");
  }

  @Test
  void whatAPersonCanDoBesideTheNextBoltIsCounted() {
    assertThat(Due.of(bench.job()).text())
        .isEqualTo(
            "Next: a/1, final pass, 50 N.m (45 to 55 N.m)."
                + " 1 more thing waits for a person (job status J-5).");
  }

  @Test
  void aScrappedFastenerLeavesTheJobToBeAbandonedAndACompleteOneToBeClosed() {
    bench.hitOn("a/1", "60 N.m");
    bench.person(
        new Dispose(bench.jobName(), "a/1", Disposition.SCRAP, "badge-07", "thread stripped"));
    assertThat(Awaited.of(bench.job()))
        .extracting(Awaited::command)
        .contains("witnessmark job abandon J-5 --by BADGE --because WHY")
        .noneMatch(c -> c.startsWith("witnessmark dispose"));
    Bench one = Bench.on(Bench.group(1));
    one.hit("50 N.m");
    assertThat(Awaited.of(one.job()))
        .containsExactly(
            new Awaited("the job can be closed", "witnessmark job close J-5 --by BADGE"));
  }

  @Test
  void aQuestionNamesItsEntryAndAFastenerOfSeveralWordsIsQuoted() {
    Bench other =
        Bench.on(
            Bench.head()
                + "[[step]]\nid = \"p\"\nkind = \"tighten\"\ntitle = \"P\"\n"
                + "positions = [\"front left\"]\ntorque = \"50 N.m\"\ntolerance = \"10 %\"\n"
                + Bench.step(
                    "b",
                    2,
                    "after = []",
                    "[[step.pass]]\nname = \"final\"\ntorque = \"90 N.m\"\ntolerance = \"10 %\""));
    long question = other.size();
    other.hit("70 N.m");
    other.hitOn("p/front left", "60 N.m");
    assertThat(Awaited.of(other.job()))
        .extracting(Awaited::command)
        .containsExactly(
            "witnessmark dispose J-5 'p/front left' --as DECISION --by BADGE --because WHY",
            "witnessmark assign " + question + " --fastener FASTENER --by BADGE --because WHY");
  }

  @Test
  void aStationHasOneOpenJobAndAUnitOneUnfinishedJobOfAProcedure() {
    declined(
        new OpenJob("P-1", NOBODY, "ATR-26-0148", Bench.STATION, NOBODY),
        "Station bench-1 has job J-5 on unit ATR-26-0147; suspend or close that first.");
    declined(
        new OpenJob("P-1", NOBODY, "ATR-26-0147", "bench-2", NOBODY),
        "Unit ATR-26-0147 has the unfinished job J-5 (open); resume or abandon that.");
    declined(
        new OpenJob("P-2", NOBODY, "ATR-26-0148", "bench-2", NOBODY),
        "No released procedure P-2; name one of P-1 revision A.");
    declined(
        new OpenJob("P-1", Optional.of("B"), "ATR-26-0148", "bench-2", NOBODY),
        "No released procedure P-1 revision B; name one of P-1 revision A.");
  }

  @Test
  void aReleasedRevisionNeverChanges() {
    String same = Bench.group(2) + GATES;
    declined(
        new Release(ProcedureFile.parse("x", same), same, NOBODY),
        "Revision A of P-1 was released by entry 4, with this very text: nothing to do.");
    String other = Bench.group(3);
    declined(
        new Release(ProcedureFile.parse("x", other), other, NOBODY),
        "Revision A of P-1 was released by entry 4, with another text."
            + " A released revision never changes: raise the revision.");
  }

  @Test
  void aUnitMustFitTheProceduresPattern() {
    String text =
        Bench.group(1)
            .replace("title = \"Test\"\n", "title = \"Test\"\nunit-pattern = \"ATR-26-[0-9]{4}\"\n")
            .replace("P-1", "P-9");
    bench.person(new Release(ProcedureFile.parse("x", text), text, NOBODY));
    declined(
        new OpenJob("P-9", NOBODY, "ATR-27-1", "bench-2", NOBODY),
        "Unit ATR-27-1 does not fit P-9, which is for units like ATR-26-[0-9]{4}. Check both.");
  }

  @Test
  void gatesAreSatisfiedByKnownPeopleWhenDueAndOnce() {
    declined(
        new Attest(bench.jobName(), "wire", "badge-99"),
        "Badge badge-99 is not enrolled; enrol it first (operator enrol badge-99).");
    declined(
        new Attest(bench.jobName(), "wire", "badge-07"),
        "Step wire is not due yet: do a:final first.");
    declined(
        new Attest(bench.jobName(), "wires", "badge-07"),
        "Procedure P-1 has no step \"wires\" to attest; name one of wire.");
    declined(
        new Measure(bench.jobName(), "gap", List.of(), "badge-07"),
        "Step gap takes 1 number(s), value, in mm; got 0. Enter each of them.");
    bench.person(new Measure(bench.jobName(), "gap", List.of(new Digits("1.5")), "badge-07"));
    declined(
        new Measure(bench.jobName(), "gap", List.of(new Digits("1.5")), "badge-07"),
        "Step gap is done already (entry 6).");
  }

  @Test
  void aJobIsSuspendedResumedAndFoundOnlyWhenThatMakesSense() {
    declined(
        new ResumeJob("J-5", NOBODY, NOBODY),
        "Job J-5 is not suspended: it is open at bench-1. Go on there, or suspend it there first.");
    bench.person(new SuspendJob("J-5", NOBODY, NOBODY));
    declined(new SuspendJob("J-5", NOBODY, NOBODY), "Job J-5 is suspended already.");
    declined(new Attest("J-5", "wire", "badge-07"), "Job J-5 is suspended; resume it first.");
    declined(new CloseJob("J-9", NOBODY), "No job J-9 is open or suspended; name one of J-5.");
    bench.person(new OpenJob("P-1", NOBODY, "ATR-26-0148", Bench.STATION, NOBODY));
    declined(
        new ResumeJob("J-5", NOBODY, NOBODY),
        "Station bench-1 has job J-7; suspend or close that first.");
    bench.person(new ResumeJob("J-5", Optional.of("bench-2"), NOBODY));
    assertThat(bench.shop().active("bench-2")).isPresent();
  }

  @Test
  void onlyANonconformingFastenerIsDisposed() {
    declined(
        new Dispose("J-5", "a/1", Disposition.REWORK, "badge-07", "x"),
        "Fastener a/1 is not nonconforming: nothing to dispose.");
    declined(
        new Dispose("J-5", "a/9", Disposition.REWORK, "badge-07", "x"),
        "Procedure P-1 has no fastener \"a/9\"; name one as step/position, e.g. a/1.");
  }

  @Test
  void aReasonMustSaySomething() {
    for (String nothing : List.of("", "  ", "two\nlines", "x".repeat(501))) {
      assertThatThrownBy(() -> new Dispose("J-5", "a/1", Disposition.REWORK, "badge-07", nothing))
          .isInstanceOf(IllegalArgumentException.class)
          .hasMessage("a reason (--because) must be one line of 1 to 500 characters that says why");
    }
  }

  @Test
  void onlyAnUndecidedEventIsAssigned() {
    Entry.TorqueTaken taken = bench.hit("50 N.m");
    declined(
        new Assign(6, taken, "J-5", Optional.of("a/2"), "badge-07", "x"),
        "Entry 6 was decided already: credited on a/1.");
  }
}
