package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Meaning;
import witnessmark.job.Due;

/**
 * docs/sentences.md holds every refusal, question and answer that a person meets at a bench, as the
 * program says it; those about readings stand in docs/entries.md. Each says what happened and what
 * to do next.
 */
class SentencesDocTest {
  private static final Path SOURCE = Path.of("src/main/java/witnessmark");
  private static final int LINE = 100;
  private static final String DECLINED = "## Commands that are declined";
  private static final String SCANS = "## Scans";
  private static final String DUE = "## What a job waits for";
  private static final String BYTES = "## Bytes that are refused";

  /** What a person is told to do, at the beginning of a clause. */
  private static final Pattern IMPERATIVE =
      Pattern.compile(
          "(?i)(?:^|[.:;,?(] |\\b(?:or|and|then) )(?:next:|(?:abandon|adjust|answer|ask|check|choose"
              + "|close|confirm|do|enrol|enter|give|go on|go over|leave|measure|name|open(?! as well)|raise|release"
              + "|resume|say|scan|set(?! aside already)|stop|suspend|tell|tighten|undo|use)\\b)");

  /** What is wrong with bytes is put right by whoever set the sender up: what is allowed there. */
  private static final Pattern ALLOWED =
      Pattern.compile("(?i)\\b(?:allowed|required|must|would tell)\\b");

  /** Sentences after which nothing is to be done, or which stand beside one that says what. */
  private static final Set<String> NOTHING_TO_DO =
      Set.of(
          // docs/entries.md: where a reading was placed
          "It was the one fastener due next.",
          "Placed by count: the group may be done in any order and no position came.",
          "The reading itself names it.",
          "A scan just before names it.",
          "It is the only place whose band holds the reading; open as well: carrier-right/3.",
          "It is the only place whose band and angle hold the reading; open as well: carrier-right/3.",
          "It is the only open place where TW-0417 may be used.",
          "It stands for carrier-right/3, which was tight before its turn and so was counted as it.",
          "It was tight already and was hit again.",
          "It is the one fastener to be reworked or replaced.",
          "It is the only fastener tightened so far.",
          "A person says that it was this one.",
          // docs/entries.md: effects; where a reading asks, its reason says what to do
          "Credited.",
          "It is pending again.",
          "It stands as it was.",
          "Nothing is credited.",
          // what was wanted is so already
          "Job J-6 is suspended already.",
          "Step frame-check is done already (entry 7).",
          "Entry 8 was decided already: credited on carrier-left/1.",
          "Entry 8 was assigned or set aside already.",
          "Fastener carrier-left/1 is not nonconforming: nothing to dispose.",
          "Badge badge-07 holds no key: nothing to withdraw.",
          "Revision C of RAM-210 was released by entry 4, with this very text: nothing to do.",
          // scans that did what they were to do, and no more is known
          "badge-07 works at bench-1 from now on.",
          "The next reading at bench-1 is for carrier-left/1.",
          "Closed J-5 on unit ATR-26-0147: every fastener and gate stands.",
          "Entry 8 answered. carrier-left/1 (final pass): 33 N.m is in the band of 29.7 to 36.3 N.m."
              + " Credited. A person says that it was this one.");

  /** What whoever set the sender up cannot put right by knowing what is allowed. */
  private static final Set<String> NOTHING_ALLOWED =
      Set.of(
          "the bytes are not UTF-8 from byte 2 on",
          "time \"2026-11-25\" is not written like \"25.11.2026 10:02:03\", or does not exist",
          "torque \"32.54\" has a point where this profile writes decimals with a comma",
          "the frame \"TW-0417 32.54\" does not match the profile's pattern",
          "the frame has no checksum where the profile's pattern looks for it",
          "the checksum \"xyz\" is not 1 to 2 hexadecimal digits",
          "the checksum is 00 but its bytes give C9",
          "the line closed 5 bytes into a frame",
          "the line closed 5 bytes into a frame of 8",
          "the line closed 4 bytes into a frame",
          "a frame was cut off after 4 bytes by the start of the next",
          "5 bytes between frames; a frame has a start and an end",
          "5 bytes before the line closed are no frame; a frame has a start");

  private static Map<String, String> sections;
  private static Set<Said> said;

  @BeforeAll
  static void build() throws IOException {
    sections = new LinkedHashMap<>();
    for (String part : Files.readString(Path.of("docs/sentences.md")).split("\n(?=## )")) {
      sections.put(part.lines().findFirst().orElseThrow(), part);
    }
    said = new LinkedHashSet<>();
    said.addAll(DeskSentences.all());
    said.addAll(ScanSentences.all());
    said.addAll(ByteSentences.all());
  }

  private static Stream<String[]> cells(String text) {
    return text.lines()
        .filter(l -> l.startsWith("| `"))
        .map(l -> l.substring(2, l.length() - 2).replace("\\|", "\u0000").split(" \\| "))
        .map(c -> Arrays.stream(c).map(s -> s.replace('\u0000', '|')).toArray(String[]::new));
  }

  private static Set<String> sentences(String section) {
    return said.stream()
        .filter(s -> s.section().equals(section))
        .map(Said::sentence)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> codes(String section) {
    return said.stream()
        .filter(s -> s.section().equals(section))
        .map(Said::code)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The sentences about readings, which docs/entries.md keeps and EntriesDocTest checks. */
  private static Set<String> aboutReadings() throws IOException {
    String entries = Files.readString(Path.of("docs/entries.md"));
    Set<String> found = new LinkedHashSet<>();
    for (String heading : List.of("### Reasons", "### Objections", "### Effects")) {
      String part = entries.substring(entries.indexOf("\n" + heading + "\n") + 1);
      cells(part.split("\n(?=### )")[0]).forEach(c -> found.add(c[c.length - 1].strip()));
    }
    return found;
  }

  @Test
  void theTablesHoldWhatTheProgramSays() {
    for (String section : List.of(DECLINED, SCANS, DUE, BYTES)) {
      Set<String> documented = new TreeSet<>();
      cells(sections.getOrDefault(section, ""))
          .forEach(
              c -> {
                assertThat(c).as("code, when, sentence: %s", List.of(c)).hasSize(3);
                assertThat(c[1].strip()).as("when: %s", c[2]).isNotEmpty();
                documented.add(c[0].replace("`", "") + " | " + c[2]);
              });
      Set<String> built = new TreeSet<>();
      said.stream()
          .filter(s -> s.section().equals(section))
          .forEach(s -> built.add(s.code() + " | " + s.sentence()));
      assertThat(documented).as(section).isEqualTo(built);
    }
  }

  @Test
  void everyWordOfTheClosedSetsHasASentence() {
    assertThat(codes(SCANS))
        .isEqualTo(
            Arrays.stream(Meaning.values())
                .map(Meaning::code)
                .collect(Collectors.toCollection(TreeSet::new)));
    assertThat(codes(DUE))
        .isEqualTo(
            Arrays.stream(Due.State.values())
                .map(Due.State::code)
                .collect(Collectors.toCollection(TreeSet::new)));
  }

  @Test
  void everyRefusalInTheProgramHasASentence() {
    Map<String, String> missing = new TreeMap<>();
    Pattern declined = Pattern.compile("new Declined\\(");
    for (String directory : List.of("desk", "scan")) {
      Set<String> people = sentences(DECLINED);
      people.addAll(sentences(SCANS));
      people.addAll(DeskSentences.whole());
      missing.putAll(lacking(Literals.afterOrBeside(SOURCE.resolve(directory), declined), people));
    }
    Pattern refused =
        Pattern.compile(
            "new (?:Refusal|Broken|Malformed)\\(|\\b(?:reason|fault|TOO_LONG)\\s*=(?!=)");
    missing.putAll(lacking(Literals.after(SOURCE.resolve("decode"), refused), sentences(BYTES)));
    assertThat(missing)
        .as("words of a refusal that stand in no sentence of docs/sentences.md, by their file")
        .isEmpty();
  }

  private static Map<String, String> lacking(Map<String, String> literals, Set<String> sentences) {
    assertThat(literals).hasSizeGreaterThan(10);
    Map<String, String> lacking = new TreeMap<>();
    literals.forEach(
        (text, file) -> {
          if (sentences.stream().noneMatch(s -> s.contains(text))) {
            lacking.put(text, file);
          }
        });
    return lacking;
  }

  @Test
  void everySentenceFitsTwoLines() throws IOException {
    Set<String> all = new LinkedHashSet<>(aboutReadings());
    said.forEach(s -> all.add(s.sentence()));
    for (String sentence : all) {
      assertThat(lines(sentence)).as(sentence).isLessThanOrEqualTo(2);
      assertThat(sentence).as("one line break at most").doesNotContain("\n");
    }
  }

  /** How many lines of 100 characters the sentence takes, broken at blanks. */
  private static int lines(String sentence) {
    int lines = 1;
    int column = 0;
    for (String word : sentence.split(" ")) {
      int needed = column == 0 ? word.length() : column + 1 + word.length();
      lines += needed > LINE ? 1 : 0;
      column = needed > LINE ? word.length() : needed;
    }
    return lines;
  }

  @Test
  void everySentenceSaysWhatToDoUnlessNothingIs() throws IOException {
    Set<String> silent = new TreeSet<>();
    Stream.of(aboutReadings(), sentences(DECLINED), sentences(SCANS), sentences(DUE))
        .flatMap(Set::stream)
        .filter(s -> !IMPERATIVE.matcher(s).find())
        .forEach(silent::add);
    assertThat(silent).isEqualTo(new TreeSet<>(NOTHING_TO_DO));
  }

  @Test
  void everyRefusalOfBytesSaysWhatIsAllowedWhereThatHelps() {
    Set<String> silent = new TreeSet<>(sentences(BYTES));
    silent.removeIf(s -> ALLOWED.matcher(s).find());
    assertThat(silent).isEqualTo(new TreeSet<>(NOTHING_ALLOWED));
  }
}
