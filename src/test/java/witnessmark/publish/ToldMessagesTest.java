package witnessmark.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import witnessmark.desk.Assign;
import witnessmark.desk.Attest;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.Measure;
import witnessmark.docs.Schemas;
import witnessmark.entry.Disposition;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.job.JobState;
import witnessmark.pipeline.Bench;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.WrenchKind;

/** What the program really tells and records, over seeded runs of a whole shop, against schemas. */
class ToldMessagesTest {
  private static final String PROCEDURE =
      Bench.head()
          + "[[step]]\nid = \"look\"\nkind = \"attest\"\ntitle = \"Frame\"\n"
          + "statement = \"Clean.\"\nnote = \"Both seats.\"\npicture = \"frame.png\"\n"
          + Bench.step(
              "a",
              3,
              "order = \"any\"",
              "angle-min = \"20\"",
              "angle-max = \"60\"",
              "wrenches = [\"TW-1\"]",
              "note = \"Hold the nut.\"",
              "acceptance = \"guarded\"",
              "guard = \"0.83\"",
              "picture = \"a.png\"",
              "after = []")
          + "[[step]]\nid = \"b\"\nkind = \"tighten\"\ntitle = \"Pivot\"\nfasteners = 2\n"
          + "torque = \"36 lbf.ft\"\nmin = \"40 N.m\"\nmax = \"45 lbf.ft\"\nafter = [\"look\"]\n"
          + "adapter = { lever = \"350 mm\", offset = \"40 mm\", angle = \"120\" }\n"
          + "[[step]]\nid = \"gap\"\nkind = \"measure\"\ntitle = \"Gap\"\nunit = \"mm\"\n"
          + "labels = [\"left\", \"right\"]\nmin = \"1\"\nmax = \"2\"\nspread = \"0.5\"\n"
          + "note = \"Feeler gauge.\"\npicture = \"gap.png\"\n"
          + "[[step]]\nid = \"wire\"\nkind = \"attest\"\ntitle = \"Wire\"\n"
          + "statement = \"Both bolts are wired.\"\n";

  private final Set<String> verdictFields = new TreeSet<>();
  private final Set<String> scannedFields = new TreeSet<>();
  private final Set<String> meanings = new TreeSet<>();
  private final Set<String> expectFields = new TreeSet<>();
  private final Set<String> stepFields = new TreeSet<>();
  private final Set<String> states = new TreeSet<>();
  private final Set<String> kinds = new TreeSet<>();

  @Test
  void everythingToldAndRecordedValidatesAndEveryFieldOfTheSchemasIsTold() {
    for (long seed = 1; seed <= 12; seed++) {
      new Run(seed).go();
    }
    assertThat(verdictFields).isEqualTo(Schemas.properties("verdict", "/$defs/data"));
    assertThat(scannedFields).isEqualTo(Schemas.properties("scanned", "/$defs/data"));
    assertThat(meanings)
        .contains("operator", "fastener", "procedure", "attest", "question", "answer", "set-aside")
        .contains("status", "declined", "repeated", "nothing");
    assertThat(expectFields).isEqualTo(Schemas.properties("expect", ""));
    Set<String> ofSteps = new TreeSet<>();
    for (String kind : List.of("tighten", "attest", "measure", "dispose", "answer")) {
      ofSteps.addAll(Schemas.properties("expect", "/$defs/" + kind));
    }
    assertThat(stepFields).isEqualTo(ofSteps);
    assertThat(states)
        .containsExactlyInAnyOrderElementsOf(Schemas.texts("expect", "/properties/state/enum"));
    assertThat(kinds).contains("torque", "assigned", "disposed", "measured", "attested", "scan");
  }

  @Test
  void theEnvelopeHasTheFieldsOfTheSchema() {
    Bench bench = Bench.on(Bench.group(1));
    Set<String> names = new TreeSet<>();
    JsonNode event = tree(VerdictEvent.of("shop-1", 7, bench.hit("50 N.m")));
    event.fieldNames().forEachRemaining(names::add);
    assertThat(names).isEqualTo(Schemas.properties("verdict", ""));
    names.clear();
    JsonNode scan = tree(ScanEvent.of("shop-1", 8, bench.scanned("a/1")));
    scan.fieldNames().forEachRemaining(names::add);
    assertThat(names).isEqualTo(Schemas.properties("scanned", ""));
    assertThat(scan.path("subject").textValue()).isEqualTo("J-5/a/1");
  }

  private static JsonNode tree(byte[] json) {
    return Schemas.parse(new String(json, StandardCharsets.UTF_8));
  }

  private static void valid(String schema, byte[] json, String where) {
    assertThat(Schemas.faults(schema, json))
        .as("%s: %s", where, new String(json, StandardCharsets.UTF_8))
        .isEmpty();
  }

  /** One job worked at with readings good and bad, people's commands and scans, all by chance. */
  private final class Run {
    private final long seed;
    private final Random random;
    private final List<witnessmark.torque.TorqueEvent> held = new ArrayList<>();
    private final Bench bench = Bench.on(PROCEDURE);
    private int told;

    Run(long seed) {
      this.seed = seed;
      this.random = new Random(seed);
    }

    void go() {
      EnrolWrench usual = Bench.wrench("TW-1");
      bench.person(
          new EnrolWrench(
              "TW-1",
              usual.low(),
              usual.high(),
              usual.calibrated(),
              usual.due(),
              Optional.of("C-26-118"),
              Optional.of(new Digits("1.5")),
              Optional.of(Torque.parse("0.1 N.m")),
              WrenchKind.INDICATING,
              true,
              Optional.of("badge-07")));
      expect(Optional.empty());
      for (int round = 0; round < 60; round++) {
        act();
        tell("seed " + seed + ", round " + round);
      }
      finish();
      tell("seed " + seed + ", finished");
    }

    private void act() {
      switch (random.nextInt(8)) {
        case 0 -> person();
        case 1 -> scan();
        case 2 -> bench.take(event(Direction.CCW));
        case 3 -> held.add(event(Direction.CW));
        case 4 -> {
          bench.rest(20);
          held.forEach(bench::takeStored);
          held.clear();
        }
        default -> bench.take(event(Direction.CW));
      }
    }

    private void scan() {
      if (bench.job().questions().isEmpty()) {
        String code = one("badge-07", "b/1", "nothing known", "P-1", "look", "wm:attest");
        Optional<String> operator = Optional.of("badge-07").filter(b -> random.nextBoolean());
        bench.rest(5);
        bench.scan(Bench.STATION, one(code, "wm:status"), operator, random.nextInt(3) == 0);
      } else {
        bench.scan("badge-07");
        bench.scan("wm:answer");
        bench.scan(Bench.STATION, "wm:answer", Optional.empty(), true);
        bench.scan(one("a/1", "b/1", "wm:set-aside"));
      }
    }

    private witnessmark.torque.TorqueEvent event(Direction direction) {
      return bench.event(
          one("TW-1", "TW-1", "TW-1", "TW-2", "TW-9"),
          one("50 N.m", "50 N.m", "50.0 N.m", "40 lbf.ft", "30 N.m", "90 N.m", "500 kgf.cm"),
          one("", "40", "40.5", "5", "90"),
          direction,
          one("", "", "a/1", "a/2", "a/3", "b/1", "b/2", "c/1"));
    }

    private String one(String... texts) {
      return texts[random.nextInt(texts.length)];
    }

    /** Answers what the job asks; a command that is not due is declined and changes nothing. */
    private void person() {
      JobState job = bench.job();
      String id = bench.jobName();
      try {
        if (!job.questions().isEmpty() && random.nextBoolean()) {
          assign(job, random.nextInt(4) == 0 ? "" : one("a/1", "b/1", "b/2"));
        } else if (!job.nonconforming().isEmpty()) {
          String fastener = job.plan().name(job.nonconforming().get(0));
          Disposition how =
              one("rework", "use").equals("use") ? Disposition.USE_AS_IS : Disposition.REWORK;
          bench.person(new Dispose(id, fastener, how, "badge-07", "looked at it"));
        } else if (random.nextBoolean()) {
          bench.person(new Attest(id, one("look", "wire"), "badge-07"));
        } else {
          bench.person(new Measure(id, "gap", digits("1.5", one("1.6", "9")), "badge-07"));
        }
      } catch (Declined notDue) {
        assertThat(notDue).hasMessageEndingWith(".");
      }
    }

    private void assign(JobState job, String fastener) {
      long n = job.questions().iterator().next();
      Entry.TorqueTaken taken = (Entry.TorqueTaken) bench.log().get((int) n);
      Optional<String> where = Optional.of(fastener).filter(f -> !f.isEmpty());
      bench.person(new Assign(n, taken, bench.jobName(), where, "badge-07", "saw it"));
    }

    private List<Digits> digits(String... texts) {
      List<Digits> digits = new ArrayList<>();
      for (String text : texts) {
        digits.add(new Digits(text));
      }
      return digits;
    }

    /** Brings the job to its end, so that the last state is told, too. */
    private void finish() {
      for (int tries = 0; !bench.job().complete() && tries < 500; tries++) {
        JobState job = bench.job();
        if (!job.questions().isEmpty()) {
          assign(job, "");
        } else {
          person();
          for (String fastener : List.of("a/1", "a/2", "a/3", "b/1", "b/2")) {
            bench.take(bench.event("TW-1", "50 N.m", "40", Direction.CW, fastener));
          }
        }
        tell("seed " + seed + ", last things, round " + tries);
      }
      assertThat(bench.job().complete()).as("seed %d: complete", seed).isTrue();
    }

    private void tell(String where) {
      for (; told < bench.log().size(); told++) {
        Entry entry = bench.log().get(told);
        if (entry instanceof Entry.LogOpened) {
          continue; // the bench has no key, so its origin is none
        }
        byte[] bytes = EntryJson.bytes(entry);
        valid("entry", bytes, where);
        kinds.add(tree(bytes).path("kind").textValue());
        if (entry instanceof Entry.TorqueTaken t) {
          verdict(VerdictEvent.of("shop-1", told, t), where);
        } else if (entry instanceof Entry.Assigned a) {
          verdict(VerdictEvent.of("shop-1", told, a, taken(a.assigns())), where);
        } else if (entry instanceof Entry.Reread r) {
          verdict(VerdictEvent.of("shop-1", told, r, taken(r.rereads())), where);
        } else if (entry instanceof Entry.Scan s) {
          scanned(ScanEvent.of("shop-1", told, s), where);
        }
      }
      expect(bench.shop().active(Bench.STATION));
    }

    private Entry.TorqueTaken taken(long n) {
      return (Entry.TorqueTaken) bench.log().get((int) n);
    }

    private void verdict(byte[] message, String where) {
      valid("verdict", message, where);
      tree(message).path("data").fieldNames().forEachRemaining(verdictFields::add);
    }

    private void scanned(byte[] message, String where) {
      valid("scanned", message, where);
      JsonNode data = tree(message).path("data");
      data.fieldNames().forEachRemaining(scannedFields::add);
      meanings.add(data.path("meaning").textValue());
    }

    private void expect(Optional<JobState> job) {
      expect(ExpectMessage.of(Bench.STATION, job));
      expect(ExpectMessage.notRecording(Bench.STATION, "the disk is full"));
    }

    private void expect(byte[] message) {
      valid("expect", message, "seed " + seed + ", entry " + told);
      JsonNode tree = tree(message);
      tree.fieldNames().forEachRemaining(expectFields::add);
      tree.path("expect").forEach(s -> s.fieldNames().forEachRemaining(stepFields::add));
      states.add(tree.path("state").textValue());
    }
  }
}
