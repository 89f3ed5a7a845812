package witnessmark.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Role;
import witnessmark.job.Choices;
import witnessmark.job.Operator;
import witnessmark.job.Shop;
import witnessmark.pipeline.Bench;

/** Who may decide what on a nonconforming fastener, and in which role. */
class DisposeTest {
  /** A shop of technician badge-07, second persons badge-08 and badge-09, and a bad a/1. */
  private static Bench bad(String criticality, String hand) {
    Bench bench = Bench.on(Bench.group(1, "criticality = \"" + criticality + "\"", "tries = 2"));
    bench.enrol("badge-07", Role.TECHNICIAN);
    bench.enrol("badge-08", Role.SECOND);
    bench.enrol("badge-09", Role.SECOND, Role.TECHNICIAN);
    if (!hand.isEmpty()) {
      bench.scan(hand);
    }
    assertThat(bench.hit("60 N.m").judged().fastener()).contains("a/1");
    return bench;
  }

  private static Dispose as(Bench bench, Disposition disposition, String by) {
    return new Dispose(bench.jobName(), "a/1", disposition, by, "looked at it");
  }

  private static void declined(Bench bench, Command command, String why) {
    long size = bench.size();
    assertThatThrownBy(() -> bench.person(command)).isInstanceOf(Declined.class).hasMessage(why);
    assertThat(bench.size()).as("nothing goes on record").isEqualTo(size);
  }

  private static Entry.Disposed decided(Bench bench, Command command) {
    bench.person(command);
    return (Entry.Disposed) bench.log().get(bench.log().size() - 1);
  }

  @Test
  void aTechnicianDecidesWhatIsTightenedAnewUnlessItIsDangerous() {
    for (String criticality : List.of("other", "function")) {
      for (Disposition d : List.of(Disposition.REWORK, Disposition.REPLACE)) {
        Bench bench = bad(criticality, "badge-07");
        assertThat(decided(bench, as(bench, d, "badge-07")).role()).contains(Role.TECHNICIAN);
      }
    }
    Bench bench = bad("danger", "badge-07");
    declined(
        bench,
        as(bench, Disposition.REPLACE, "badge-07"),
        "badge-07 (technician) may not decide replace on a/1, of criticality danger."
            + " Ask a second person or quality: badge-08, badge-09.");
  }

  @Test
  void theSecondPersonIsAnotherThanWhoseReadingItWas() {
    Bench bench = bad("danger", "badge-08");
    declined(
        bench,
        as(bench, Disposition.REPLACE, "badge-08"),
        "badge-08 made the reading of entry 11 and cannot be the second person for a/1."
            + " Ask a second person or quality: badge-09.");
    assertThat(decided(bench, as(bench, Disposition.REPLACE, "badge-09")).role())
        .contains(Role.SECOND);
  }

  @Test
  void whoseReadingItWasFollowsItWhenAPersonPlacesIt() {
    Bench bench =
        Bench.on(
            Bench.group(1, "criticality = \"danger\"")
                + Bench.step("b", 1, "after = []", "criticality = \"danger\""));
    bench.enrol("badge-08", Role.SECOND);
    bench.scan("badge-08");
    Entry.TorqueTaken asks = bench.hit("60 N.m");
    bench.person(
        new Assign(
            bench.size() - 1, asks, bench.jobName(), Optional.of("a/1"), "badge-07", "seen"));
    assertThat(((Entry.Assigned) bench.log().get(bench.log().size() - 1)).operator())
        .contains("badge-08");
    declined(
        bench,
        as(bench, Disposition.REPLACE, "badge-08"),
        "badge-08 made the reading of entry 9 and cannot be the second person for a/1."
            + " Ask a second person or quality: badge-07.");
  }

  @Test
  void aReadingThatNamesNobodyLeavesADangerousFastenerToQuality() {
    Bench bench = bad("danger", "");
    declined(
        bench,
        as(bench, Disposition.REPLACE, "badge-09"),
        "The reading of entry 9 names nobody, so that badge-09 cannot be shown to be a second person."
            + " Ask quality; nobody is enrolled as that: operator enrol BADGE --role quality.");
    bench.enrol("badge-11", Role.QUALITY);
    assertThat(decided(bench, as(bench, Disposition.REPLACE, "badge-11")).role())
        .contains(Role.QUALITY);
  }

  @Test
  void onlyQualityAcceptsOrScraps() {
    for (String criticality : List.of("other", "function", "danger")) {
      for (Disposition d : List.of(Disposition.USE_AS_IS, Disposition.SCRAP)) {
        Bench bench = bad(criticality, "badge-07");
        declined(
            bench,
            as(bench, d, "badge-09"),
            "badge-09 (technician, second) may not decide "
                + d.code()
                + " on a/1, of criticality "
                + criticality
                + ". Ask quality; nobody is enrolled as that:"
                + " operator enrol BADGE --role quality.");
      }
    }
    Bench bench = bad("function", "badge-07");
    bench.enrol("badge-07", Role.TECHNICIAN, Role.QUALITY);
    assertThat(decided(bench, as(bench, Disposition.USE_AS_IS, "badge-07")).role())
        .as("a shop of one")
        .contains(Role.QUALITY);
    assertThat(bench.job().complete()).isTrue();
  }

  @Test
  void aDangerousFastenerIsUsedAsItIsOnlyUnderANumberedConcession() {
    Bench bench = bad("danger", "badge-07");
    bench.enrol("badge-11", Role.QUALITY);
    declined(
        bench,
        as(bench, Disposition.USE_AS_IS, "badge-11"),
        "Fastener a/1, of criticality danger, is used as it is only under a concession:"
            + " give its number (--concession).");
    Entry.Disposed conceded =
        decided(
            bench,
            new Dispose(
                bench.jobName(),
                "a/1",
                Disposition.USE_AS_IS,
                "badge-11",
                Optional.of("C-12"),
                "measured, not stretched"));
    assertThat(conceded.concession()).contains("C-12");
    assertThatThrownBy(
            () ->
                new Dispose(
                    "J-5", "a/1", Disposition.REPLACE, "badge-11", Optional.of("C-12"), "x"))
        .hasMessage("a concession (--concession) goes with use-as-is, not with replace");
  }

  @Test
  void aDangerousFastenerThatWasOvertightenedIsNotTightenedAgain() {
    Bench bench = bad("danger", "badge-07");
    bench.enrol("badge-11", Role.QUALITY);
    declined(
        bench,
        as(bench, Disposition.REWORK, "badge-11"),
        "Fastener a/1 was overtightened, and its step is of criticality danger."
            + " Choose: replace, use-as-is, scrap.");
    decided(bench, as(bench, Disposition.REPLACE, "badge-11"));
    bench.hit("40 N.m");
    bench.hit("40 N.m");
    assertThat(bench.job().condition(0).nonconforming()).isTrue();
    assertThat(decided(bench, as(bench, Disposition.REWORK, "badge-08")).role())
        .as("not overtightened this time")
        .contains(Role.SECOND);
  }

  @Test
  void whatCanBeDecidedNamesTheRoleItTakesHere() {
    assertThat(Choices.of(bad("danger", "badge-07").job(), 0).toString())
        .isEqualTo("{REPLACE=SECOND, USE_AS_IS=QUALITY, SCRAP=QUALITY}");
    assertThat(Choices.of(bad("danger", "").job(), 0).toString())
        .isEqualTo("{REPLACE=QUALITY, USE_AS_IS=QUALITY, SCRAP=QUALITY}");
    assertThat(Choices.of(bad("function", "").job(), 0).toString())
        .isEqualTo("{REWORK=TECHNICIAN, REPLACE=TECHNICIAN, USE_AS_IS=QUALITY, SCRAP=QUALITY}");
  }

  @Test
  void somethingLooseIsNotUsedAsItIs() {
    Bench bench = bad("function", "badge-07");
    bench.enrol("badge-11", Role.QUALITY);
    bench.loosen("a/1");
    declined(
        bench,
        as(bench, Disposition.USE_AS_IS, "badge-11"),
        "Fastener a/1 was loosened since entry 11, or what it depends on was:"
            + " there is nothing to accept. Choose: rework, replace, scrap.");
  }

  @Test
  void somethingWhoseSeatWasLoosenedIsNotUsedAsItIs() {
    Bench bench = Bench.on(Bench.group(1) + Bench.step("b", 1, "after = [\"a\"]"));
    bench.hit("50 N.m");
    bench.hit("60 N.m");
    assertThat(bench.loosen("a/1").judged().undoes()).containsExactly("b:final");
    declined(
        bench,
        new Dispose(bench.jobName(), "b/1", Disposition.USE_AS_IS, "badge-07", "x"),
        "Fastener b/1 was loosened since entry 7, or what it depends on was:"
            + " there is nothing to accept. Choose: rework, replace, scrap.");
  }

  @Test
  void whoeverWasEnrolledBeforeThereWereRolesIsATechnician() {
    String old =
        "{\"kind\":\"operator-enrolled\",\"v\":1,\"at\":\"2026-11-25T08:00:00.000Z\","
            + "\"operator\":\"badge-07\",\"name\":\"bench 1\"}";
    Entry entry = EntryJson.read(old.getBytes(StandardCharsets.UTF_8));
    assertThat(Shop.EMPTY.after(0, entry).operators().get("badge-07"))
        .isEqualTo(new Operator("badge-07", "bench 1", List.of(Role.TECHNICIAN)));
    assertThat(new String(EntryJson.bytes(entry), StandardCharsets.UTF_8)).isEqualTo(old);
  }

  @Test
  void enrollingAgainKeepsWhatIsNotSaidAnew() {
    Bench bench = Bench.on(Bench.group(1));
    bench.person(
        new EnrolOperator(
            "badge-08", Optional.of("early shift"), List.of(Role.SECOND), Optional.empty()));
    bench.person(
        new EnrolOperator("badge-08", Optional.of("late shift"), List.of(), Optional.empty()));
    assertThat(bench.shop().operators().get("badge-08"))
        .isEqualTo(new Operator("badge-08", "late shift", List.of(Role.SECOND)));
    bench.enrol("badge-08", Role.QUALITY, Role.TECHNICIAN);
    assertThat(bench.shop().operators().get("badge-08"))
        .isEqualTo(new Operator("badge-08", "late shift", List.of(Role.TECHNICIAN, Role.QUALITY)));
    bench.enrol("badge-09");
    assertThat(bench.shop().operators().get("badge-09"))
        .isEqualTo(new Operator("badge-09", "badge-09", List.of(Role.TECHNICIAN)));
  }
}
