package witnessmark.scan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.pipeline.Bench;

/** Command codes and steps, scanned. */
class CommandScanTest {
  private static final String ATTEST =
      "[[step]]\nid = \"%s\"\nkind = \"attest\"\ntitle = \"%s\"\nstatement = \"Done.\"\nafter = %s\n";
  private static final String GAP =
      "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nunit = \"mm\"\n"
          + "min = \"1\"\nmax = \"2\"\nafter = [\"a\"]\n";

  private final Bench bench =
      Bench.on(
          Bench.group(1)
              + String.format(ATTEST, "wire", "Wire", "[\"a\"]")
              + String.format(ATTEST, "paint", "Paint", "[\"wire\"]"));

  private void declined(Entry.Scan scan, String text) {
    assertThat(scan.meaning()).isEqualTo(Meaning.DECLINED);
    assertThat(scan.text()).isEqualTo(text);
    assertThat(scan.job()).isEqualTo(bench.shop().active(Bench.STATION).map(j -> j.job()));
    assertThat(bench.log().get(bench.log().size() - 1)).as("nothing follows it").isEqualTo(scan);
  }

  private Entry last() {
    return bench.log().get(bench.log().size() - 1);
  }

  @Test
  void aJobIsWorkedAndClosedWithoutAnythingTyped() {
    bench.scan("badge-07");
    declined(
        bench.scanned("wm:close"),
        "Job J-5 cannot be closed yet. Next: a/1, final pass, 50 N.m (45 to 55 N.m).");
    declined(bench.scanned("wire"), "Step wire is not due yet: do a:final first.");
    bench.hit("50 N.m");
    Entry.Scan step = bench.scanned("wire");
    assertThat(step.meaning()).isEqualTo(Meaning.ATTEST);
    assertThat(step.text()).isEqualTo("badge-07 confirms wire. Confirm (attest paint): Done.");
    assertThat(last()).isEqualTo(new Entry.Attested(step.at(), "J-5", "wire", "badge-07"));
    declined(bench.scanned("wire"), "Step wire is done already (entry 12).");
    assertThat(bench.scanned("wm:attest").meaning()).isEqualTo(Meaning.ATTEST);
    assertThat(((Entry.Attested) last()).step()).isEqualTo("paint");
    declined(
        bench.scanned("wm:attest"),
        "Nothing is to be confirmed now. Everything is done: close the job.");
    Entry.Scan close = bench.scanned("wm:close");
    assertThat(close.meaning()).isEqualTo(Meaning.CLOSE);
    assertThat(close.text())
        .isEqualTo("Closed J-5 on unit ATR-26-0147: every fastener and gate stands.");
    assertThat(last())
        .isEqualTo(
            new Entry.JobClosed(close.at(), "J-5", Optional.of("badge-07"), OptionalLong.of(5)));
    assertThat(bench.shop().jobs()).isEmpty();
  }

  @Test
  void nothingIsConfirmedByNobody() {
    bench.hit("50 N.m");
    declined(
        bench.scanned("wm:attest"),
        "Nobody is known at bench-1 to confirm wire: scan your badge, then wm:attest again.");
    declined(
        bench.scanned("wire"),
        "Nobody is known at bench-1 to confirm wire: scan your badge, then wire again.");
    declined(
        (Entry.Scan)
            bench.scan(Bench.STATION, "wire", Optional.of("badge-99"), false).entries().get(0),
        "Badge badge-99 is not enrolled; enrol it first (operator enrol badge-99).");
    bench.scan(Bench.STATION, "wm:attest", Optional.of("badge-07"), false);
    assertThat(((Entry.Attested) last()).by()).isEqualTo("badge-07");
    assertThat(bench.shop().operatorAt()).as("for that scan only").isEmpty();
  }

  @Test
  void twoStepsDueAreNotConfirmedByOneCommand() {
    Bench two =
        Bench.on(
            Bench.group(1, "after = []")
                + String.format(ATTEST, "wire", "Wire", "[]")
                + String.format(ATTEST, "paint", "Paint", "[]")
                + GAP);
    two.scan("badge-07");
    assertThat(two.scanned("wm:attest").text())
        .isEqualTo("Several steps are to be confirmed: wire, paint. Scan the step itself.");
    assertThat(two.scanned("gap").text())
        .isEqualTo("Step gap wants numbers, which no scan gives: enter them (measure gap).");
    assertThat(two.scanned("a").text())
        .isEqualTo("Step a is tightened, not confirmed: scan one of its positions, e.g. a/1.");
    assertThat(two.job().gates()).isEmpty();
  }

  @Test
  void aLabelReadTwiceConfirmsOneStepOnly() {
    bench.scan("badge-07");
    bench.hit("50 N.m");
    bench.scan("wm:attest");
    bench.scan(Bench.STATION, "wm:attest", Optional.empty(), false);
    assertThat(bench.job().gates()).containsOnlyKeys("wire");
  }

  @Test
  void howTheJobStandsIsTold() {
    assertThat(bench.scanned("wm:status").text())
        .isEqualTo(
            "J-5 on unit ATR-26-0147: 0 of 1 passes done. "
                + "Next: a/1, final pass, 50 N.m (45 to 55 N.m).");
    assertThat(bench.scanned("wm:suspend").text())
        .isEqualTo("Suspended J-5 on unit ATR-26-0147. Scan a unit or a job to go on at bench-1.");
    Entry.Scan idle = bench.scanned("wm:status");
    assertThat(idle.meaning()).isEqualTo(Meaning.STATUS);
    assertThat(idle.text())
        .isEqualTo(
            "No job is open at bench-1. Suspended here: J-5 on unit ATR-26-0147. "
                + "Scan a unit or a job.");
    declined(bench.scanned("wm:suspend"), "No job is open at bench-1. Scan a unit or a job first.");
    declined(
        bench.scanned("wm:CLOSE"),
        "No command is called so. Scan one of wm:status, wm:attest, wm:answer, wm:set-aside,"
            + " wm:suspend, wm:close.");
  }

  @Test
  void theNewestBadgeCountsAndAScansOwnOperatorForThatScan() {
    bench.person(new witnessmark.desk.EnrolOperator("badge-11", "quality", Optional.empty()));
    bench.scan("badge-07");
    bench.scan("badge-11");
    bench.hit("50 N.m");
    bench.scan(Bench.STATION, "wire", Optional.of("badge-07"), false);
    assertThat(((Entry.Attested) last()).by()).isEqualTo("badge-07");
    bench.scan("paint");
    assertThat(((Entry.Attested) last()).by()).isEqualTo("badge-11");
  }
}
