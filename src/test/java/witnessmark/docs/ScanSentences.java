package witnessmark.docs;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.desk.Attest;
import witnessmark.desk.Dispose;
import witnessmark.desk.OpenJob;
import witnessmark.desk.SuspendJob;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.Meaning;
import witnessmark.job.Due;
import witnessmark.pipeline.Bench;
import witnessmark.scan.Code;
import witnessmark.scan.Reader;

/** Scans everything that a bench answers to, and looks at what each state of a job says. */
final class ScanSentences {
  private final List<Said> said = new ArrayList<>();

  private ScanSentences() {}

  static List<Said> all() {
    ScanSentences all = new ScanSentences();
    all.due();
    all.units();
    all.several();
    all.commands();
    all.answers();
    return all.said;
  }

  private void scan(Bench bench, String code) {
    add(bench.scanned(code));
  }

  private void add(Entry.Scan scan) {
    said.add(new Said("## Scans", scan.meaning().code(), scan.text()));
  }

  private void due(Bench bench) {
    Due due = Due.of(bench.job());
    said.add(new Said("## What a job waits for", due.state().code(), due.text()));
  }

  private void due() {
    due(RearAxle.atWork());
    due(RearAxle.asked());
    Bench bench = RearAxle.bench();
    bench.person(new Attest("J-6", "frame-check", "badge-07"));
    bench.hit("TW-0417", "60 N.m", "", "carrier-left/1");
    due(bench);
    bench.person(new Dispose("J-6", "carrier-left/1", Disposition.SCRAP, "badge-07", "cracked"));
    due(bench);
    String attest =
        "[[step]]\nid = \"frame-check\"\nkind = \"attest\"\ntitle = \"Frame\"\n"
            + "statement = \"The frame's seats are clean and free of paint.\"\n";
    String measure =
        "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nunit = \"mm\"\n"
            + "labels = [\"left\", \"right\"]\nmin = \"3.0\"\nmax = \"5.0\"\nspread = \"0.5\"\n";
    due(Bench.on(Bench.head() + attest + measure));
    due(Bench.on(Bench.head() + measure));
    due(Bench.on(Bench.head() + attest + measure + "after = []\n"));
    due(Bench.on(Bench.group(4, "order = \"any\"")));
    Bench done = Bench.on(Bench.group(1));
    done.hit("50 N.m");
    due(done);
  }

  private void units() {
    Bench bench = Bench.without(RearAxle.TEXT);
    bench.person(Bench.wrench("TW-0417"));
    scan(bench, "4012345678901");
    scan(bench, "wm:status");
    scan(bench, "wm:attest");
    scan(bench, "badge-07");
    scan(bench, "ATR-26-0147");
    add((Entry.Scan) bench.scan(Bench.STATION, "ATR-26-0147", nobody(), true).entries().get(0));
    bench.rest(60);
    scan(bench, "ATR-26-0147");
    scan(bench, "frame-check");
    scan(bench, "carrier-left/1");
    scan(bench, "wm:status");
    scan(bench, "wm:close");
    scan(bench, "wm:suspend");
    scan(bench, "wm:status");
    scan(bench, "ATR-26-0147");
  }

  private void several() {
    Bench bench = Bench.without(RearAxle.TEXT);
    bench.release(RearAxle.TEXT.replace("RAM-210", "RAM-220"));
    scan(bench, "ATR-26-0147");
    scan(bench, "RAM-220");
    scan(bench, "ATR-25-1");
    for (String procedure : List.of("RAM-210", "RAM-220")) {
      bench.person(
          new OpenJob(procedure, Optional.empty(), "ATR-26-0147", Bench.STATION, nobody()));
      String job = bench.shop().active(Bench.STATION).orElseThrow().job();
      bench.person(new SuspendJob(job, nobody(), Optional.empty()));
    }
    scan(bench, "ATR-26-0147");
  }

  private void commands() {
    Bench bench = RearAxle.bench();
    scan(bench, "wm:stop");
    scan(bench, "wm:attest");
    scan(bench, "gap");
    scan(bench, "carrier-left");
    bench.scan("badge-07");
    bench.scan("wm:attest");
    scan(bench, "wm:attest");
    String gate =
        "[[step]]\nid = \"%s\"\nkind = \"attest\"\ntitle = \"x\"\nstatement = \"x\"\nafter = []\n";
    Bench two =
        Bench.on(
            Bench.head() + String.format(gate, "frame-check") + String.format(gate, "hand-over"));
    two.scan("badge-07");
    scan(two, "wm:attest");
    Bench done = Bench.on(Bench.group(1));
    done.hit("50 N.m");
    scan(done, "wm:close");
  }

  private void answers() {
    Bench nobody = RearAxle.asked();
    scan(nobody, "wm:answer");
    Bench bench = RearAxle.asked();
    bench.scan("badge-07");
    scan(bench, "wm:set-aside");
    scan(bench, "wm:answer");
    bench.rest(180);
    scan(bench, "carrier-left/1");
    bench.scan("wm:answer");
    scan(bench, "carrier-left/1");
    scan(bench, "wm:answer");
    Bench aside = RearAxle.asked();
    aside.hit("TW-0417", "33.5 N.m", "", "");
    aside.scan("badge-07");
    scan(aside, "wm:answer");
    scan(aside, "wm:set-aside");
    Code code =
        new Code("wm:answer", Bench.STATION, Optional.of("badge-07"), aside.log().get(0).at());
    said.add(
        new Said(
            "## Scans",
            Meaning.DECLINED.code(),
            Reader.read(aside.shop(), code, n -> Optional.empty()).text()));
  }

  private static Optional<String> nobody() {
    return Optional.empty();
  }
}
