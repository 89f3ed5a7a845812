package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import witnessmark.entry.Disposition;
import witnessmark.entry.Effect;
import witnessmark.entry.Meaning;
import witnessmark.entry.Objection;
import witnessmark.entry.Reason;
import witnessmark.entry.Role;
import witnessmark.entry.Word;
import witnessmark.job.Due;
import witnessmark.link.LinkState;
import witnessmark.torque.Direction;
import witnessmark.torque.TorqueUnit;
import witnessmark.torque.Verdict;

/** The words that schemas list are those that the program knows, none more and none less. */
class TermsTest {
  private static <T> List<String> codes(T[] values, Function<T, String> code) {
    return Arrays.stream(values).map(code).toList();
  }

  private static List<String> terms(String name) {
    return Schemas.texts("terms", "/$defs/" + name + "/enum");
  }

  @Test
  void theWordsOfTheTermsAreThoseOfTheProgram() {
    assertThat(terms("unit")).isEqualTo(codes(TorqueUnit.values(), TorqueUnit::symbol));
    assertThat(terms("direction")).isEqualTo(codes(Direction.values(), Direction::code));
    assertThat(terms("verdict")).isEqualTo(codes(Verdict.values(), Verdict::code));
    assertThat(terms("effect")).isEqualTo(codes(Effect.values(), Word::code));
    assertThat(terms("objection")).isEqualTo(codes(Objection.values(), Word::code));
    assertThat(terms("meaning")).isEqualTo(codes(Meaning.values(), Word::code));
    assertThat(terms("disposition")).isEqualTo(codes(Disposition.values(), Word::code));
    assertThat(terms("role")).isEqualTo(codes(Role.values(), Word::code));
    assertThat(terms("placed"))
        .containsExactlyInAnyOrderElementsOf(
            Stream.of(Reason.values()).filter(Reason::placed).map(Word::code).toList());
    assertThat(terms("unplaced"))
        .containsExactlyInAnyOrderElementsOf(
            Stream.of(Reason.values()).filter(r -> !r.placed()).map(Word::code).toList());
  }

  @Test
  void theWordsOfMessagesAndEntriesAreThoseOfTheProgram() {
    assertThat(Schemas.texts("expect", "/properties/state/enum"))
        .containsExactlyInAnyOrderElementsOf(
            Stream.concat(
                    Stream.of("idle", "not-recording"),
                    Stream.of(Due.State.values()).map(Due.State::code))
                .toList());
    assertThat(Schemas.texts("health", "/properties/links/additionalProperties/enum"))
        .isEqualTo(codes(LinkState.values(), s -> s.name().toLowerCase(java.util.Locale.ROOT)));
    assertThat(Schemas.texts("verdict", "/$defs/data/properties/unitcode/enum"))
        .isEqualTo(Stream.of(TorqueUnit.values()).flatMap(u -> u.rec20().stream()).toList());
    assertThat(Schemas.texts("verdict", "/$defs/data/properties/evaluation/enum"))
        .containsAll(codes(Verdict.values(), Verdict::evaluation))
        .contains("Undefined")
        .hasSize(4);
  }

  @Test
  void aTorqueOfTheLogMayHaveEveryUnit() {
    String pattern = Schemas.file("terms").at("/$defs/torque/pattern").textValue();
    for (TorqueUnit unit : TorqueUnit.values()) {
      assertThat("32.50 " + unit).matches(pattern);
    }
    for (String other : List.of("32.5 Nm", "32.5 ozf.ft", "32.5", "-1 N.m", "32.5  N.m", "1 cN")) {
      assertThat(other).doesNotMatch(pattern);
    }
  }
}
