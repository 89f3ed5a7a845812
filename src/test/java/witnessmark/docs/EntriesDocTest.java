package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.Meaning;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.entry.Role;
import witnessmark.entry.Rule;
import witnessmark.entry.SampleEntries;
import witnessmark.entry.Word;
import witnessmark.job.Authority;
import witnessmark.judge.Wording;
import witnessmark.procedure.Criticality;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** docs/entries.md names every kind, field and word of the log, and the sentences people read. */
class EntriesDocTest {
  private String document;

  @BeforeEach
  void readDocument() throws IOException {
    document = Files.readString(Path.of("docs/entries.md"));
  }

  /** The text under a heading, to the next of its level or above. */
  private String section(String heading) {
    int level = heading.indexOf(' ');
    int from = document.indexOf("\n" + heading + "\n");
    assertThat(from).as(heading).isPositive();
    String rest = document.substring(from + heading.length() + 1);
    return Pattern.compile("\n#{1," + level + "} ").split(rest)[0];
  }

  /** The rows of all tables of a text, by each name in the first cell; the last cell of each. */
  private static Map<String, String> rows(String text) {
    Map<String, String> rows = new LinkedHashMap<>();
    text.lines()
        .filter(l -> l.startsWith("| `"))
        .forEach(
            l -> {
              String[] cells = l.substring(2, l.length() - 1).split(" \\| ?");
              for (String name : cells[0].split(", ")) {
                rows.put(name.strip().replace("`", ""), cells[cells.length - 1].strip());
              }
            });
    return rows;
  }

  private static Set<String> codes(Word[] words) {
    Set<String> codes = new TreeSet<>();
    Stream.of(words).map(Word::code).forEach(codes::add);
    return codes;
  }

  @Test
  void everyKindHasASectionWithItsFieldsAndNoOther() {
    Set<String> headings = new TreeSet<>();
    section("## Kinds")
        .lines()
        .filter(l -> l.startsWith("### "))
        .forEach(l -> headings.add(l.substring("### ".length()).replace("`", "")));
    assertThat(headings).isEqualTo(EntrySchemaTest.kinds().keySet());
    Set<String> decided = EntrySchemaTest.fields(Judged.class);
    EntrySchemaTest.kinds()
        .forEach(
            (kind, record) -> {
              String section = section("### `" + kind + "`").split("In `event`")[0];
              Set<String> fields = EntrySchemaTest.fields(record);
              if (fields.containsAll(decided)) {
                fields.removeAll(decided);
                assertThat(section).as(kind).contains("and the fields of a [decision](#decisions)");
              }
              fields.remove("at");
              assertThat(new TreeSet<>(rows(section).keySet())).as(kind).isEqualTo(fields);
            });
  }

  @Test
  void theFieldsOfEveryEntryOfAnEventAndOfADecisionAreListed() {
    assertThat(rows(document.split("\n## ")[0]).keySet()).containsExactly("kind", "v", "at");
    assertThat(new TreeSet<>(rows(section("### `torque`").split("In `event`")[1]).keySet()))
        .isEqualTo(EntrySchemaTest.fields(TorqueEvent.class));
    Set<String> decided = new TreeSet<>(rows(section("## Decisions").split("\n### ")[0]).keySet());
    assertThat(decided).isEqualTo(Schemas.properties("entry", "/$defs/judged"));
  }

  @Test
  void everyWordIsExplained() {
    assertThat(rows(section("### Reasons")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Reason.values()));
    assertThat(rows(section("### Objections")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Objection.values()));
    assertThat(rows(section("### Rules")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Rule.values()));
    assertThat(rows(section("### Effects")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Effect.values()));
    assertThat(rows(section("### Dispositions")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Disposition.values()));
    assertThat(rows(section("## Meanings")).keySet())
        .containsExactlyInAnyOrderElementsOf(codes(Meaning.values()));
    assertThat(rows(section("### Verdicts")).keySet())
        .containsExactlyInAnyOrderElementsOf(
            Arrays.stream(Verdict.values()).map(Verdict::code).toList());
    for (Verdict verdict : Verdict.values()) {
      assertThat(section("### Verdicts"))
          .contains("| `" + verdict.code() + "` | `" + verdict.evaluation() + "` |");
    }
  }

  @Test
  void whoMayDecideIsWhatTheProgramHoldsTo() {
    assertThat(rows(section("### Roles")).keySet())
        .containsExactlyElementsOf(Stream.of(Role.values()).map(Word::code).toList());
    List<String[]> table =
        section("### Who may decide")
            .lines()
            .filter(l -> l.startsWith("| "))
            .map(l -> l.substring(2, l.length() - 2).split(" \\| "))
            .toList();
    String[] head = table.get(0);
    assertThat(head)
        .containsExactly(
            Stream.concat(Stream.of("criticality"), Stream.of(Disposition.values()).map(Word::code))
                .toArray(String[]::new));
    assertThat(table.subList(2, table.size()))
        .extracting(row -> row[0])
        .containsExactlyInAnyOrder("`danger`", "`function`", "`other`");
    for (String[] row : table.subList(2, table.size())) {
      Criticality criticality =
          Criticality.valueOf(row[0].replace("`", "").toUpperCase(Locale.ROOT));
      for (Disposition d : Disposition.values()) {
        assertThat(row[1 + d.ordinal()].split(",")[0])
            .as("%s of %s", d, criticality)
            .isEqualTo(Authority.least(criticality, d).code());
      }
    }
  }

  @Test
  void theSentencesAreThoseThatTheTechnicianReads() {
    for (Reason reason : Reason.values()) {
      String sentence = sentence("### Reasons", reason.code());
      String told = told(reason, "in-band", "credited", null);
      assertThat(told)
          .as(reason.code())
          .satisfies(
              t -> {
                if (reason.placed()) {
                  assertThat(t)
                      .startsWith("carrier-left/3 (final pass): ")
                      .endsWith(" " + sentence);
                } else {
                  assertThat(t).startsWith(sentence + " ");
                }
              });
    }
    for (Verdict verdict : Verdict.values()) {
      assertThat(told(Reason.NEXT_IN_SEQUENCE, verdict.code(), "none", null))
          .as(verdict.code())
          .contains(" " + sentence("### Verdicts", verdict.code()) + " ");
    }
    for (Objection objection : Objection.values()) {
      assertThat(told(Reason.NEXT_IN_SEQUENCE, "in-band", "again", objection.code()))
          .as(objection.code())
          .contains(" " + sentence("### Objections", objection.code()) + " ");
    }
    for (Effect effect : Effect.values()) {
      assertThat(told(Reason.NEXT_IN_SEQUENCE, "in-band", effect.code(), null))
          .as(effect.code())
          .contains(" " + sentence("### Effects", effect.code()) + " ");
    }
  }

  private String sentence(String heading, String code) {
    return rows(section(heading)).get(code);
  }

  /** The program's own words for a decision, made from an entry's JSON. */
  private static String told(Reason reason, String verdict, String effect, String objection) {
    ObjectNode entry = JsonNodeFactory.instance.objectNode();
    entry.setAll(
        (ObjectNode)
            Schemas.parse(
                new String(EntryJson.bytes(SampleEntries.torque()), StandardCharsets.UTF_8)));
    ((ObjectNode) entry.path("event")).put("torque", "32.54 N.m");
    entry.remove(
        Set.of(
            "fastener",
            "pass",
            "low",
            "high",
            "verdict",
            "objections",
            "undoes",
            "alternatives",
            "angleTotal",
            "atFastener",
            "rule",
            "guardFactor",
            "guard"));
    entry.put("reason", reason.code()).put("effect", effect);
    if (reason.placed()) {
      entry.put("fastener", "carrier-left/3").put("pass", "final");
      entry.put("low", "29.7 N.m").put("high", "36.3 N.m").put("verdict", verdict);
      entry.put("angleLow", "20").put("angleHigh", "60");
    }
    entry.putArray("alternatives").add("carrier-right/3");
    if (objection != null) {
      entry.putArray("objections").add(objection);
    }
    Entry.TorqueTaken taken =
        (Entry.TorqueTaken) EntryJson.read(entry.toString().getBytes(StandardCharsets.UTF_8));
    return Wording.told(taken.judged(), taken.event()).text();
  }
}
