package witnessmark.docs;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.SampleEntries;
import witnessmark.entry.Signed;
import witnessmark.entry.Timing;
import witnessmark.torque.TorqueEvent;

class EntrySchemaTest {
  private static ObjectNode json(Entry entry) {
    return (ObjectNode) Schemas.parse(new String(EntryJson.bytes(entry), StandardCharsets.UTF_8));
  }

  /** Each kind's name with the record that writes it. */
  static Map<String, Class<?>> kinds() {
    return Arrays.stream(Entry.class.getAnnotation(JsonSubTypes.class).value())
        .collect(
            Collectors.toMap(
                JsonSubTypes.Type::name, JsonSubTypes.Type::value, (a, b) -> a, TreeMap::new));
  }

  /** The kinds that a person may have signed. */
  static final Set<String> SIGNED =
      Set.of(
          "operator-enrolled",
          "operator-key-enrolled",
          "operator-key-withdrawn",
          "wrench-enrolled",
          "wrench-bound",
          "calibration-ruled",
          "wrench-calibrated",
          "calibration-ended",
          "procedure-released",
          "disposed",
          "set-aside");

  /** The names of the JSON fields that the record writes. */
  static Set<String> fields(Class<?> record) {
    Set<String> names = new TreeSet<>();
    for (RecordComponent component : record.getRecordComponents()) {
      if (component.getAccessor().isAnnotationPresent(JsonUnwrapped.class)) {
        names.addAll(fields(component.getType()));
      } else {
        names.add(component.getName());
      }
    }
    return names;
  }

  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void anEntryOfEveryKindValidates(Entry entry) {
    assertThat(Schemas.faults("entry", json(entry))).isEmpty();
  }

  @Test
  void theKindsAreThoseOfTheProgram() {
    assertThat(kinds().values()).containsExactlyInAnyOrder(Entry.class.getPermittedSubclasses());
    List<String> listed =
        Schemas.file("entry").path("oneOf").findValuesAsText("$ref").stream()
            .map(r -> r.substring("#/$defs/".length()))
            .toList();
    assertThat(listed).containsExactlyInAnyOrderElementsOf(kinds().keySet());
    for (String kind : listed) {
      JsonNode named = Schemas.file("entry").at("/$defs/" + kind + "/properties/kind/const");
      assertThat(named.textValue()).isEqualTo(kind);
    }
  }

  @Test
  void theFieldsOfEveryKindAreThoseOfTheProgram() {
    kinds()
        .forEach(
            (kind, record) -> {
              Set<String> schema = new TreeSet<>();
              schema.addAll(Schemas.properties("entry", "/$defs/entry"));
              schema.addAll(Schemas.properties("entry", "/$defs/" + kind));
              Schemas.file("entry")
                  .at("/$defs/" + kind + "/allOf")
                  .forEach(
                      part ->
                          schema.addAll(
                              Schemas.properties(
                                  "entry", part.path("$ref").textValue().substring(1))));
              Set<String> program = fields(record);
              program.addAll(Set.of("kind", "v"));
              if (SIGNED.contains(kind)) {
                program.addAll(Set.of("key", "signature"));
              }
              assertThat(schema).as(kind).isEqualTo(program);
            });
    assertThat(Schemas.properties("entry", "/$defs/event")).isEqualTo(fields(TorqueEvent.class));
  }

  @Test
  void whatARecordWritesHasNoOtherNamesThanItsComponents() {
    for (Entry entry : SampleEntries.all()) {
      Set<String> written = new TreeSet<>();
      json(entry).fieldNames().forEachRemaining(written::add);
      written.removeAll(Set.of("kind", "v"));
      assertThat(fields(entry.getClass())).as("%s", entry).containsAll(written);
    }
  }

  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void anEntryWithAFieldOfAnotherTypeDoesNotValidate(Entry entry) {
    ObjectNode good = json(entry);
    good.fieldNames()
        .forEachRemaining(
            name -> {
              ObjectNode bad = good.deepCopy();
              bad.putObject(name).put("wrong", true);
              assertThat(Schemas.faults("entry", bad)).as("%s in %s", name, good).isNotEmpty();
            });
  }

  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void anEntryWithAnUnknownFieldDoesNotValidate(Entry entry) {
    ObjectNode bad = json(entry).put("later", 1);
    assertThat(Schemas.faults("entry", bad)).isNotEmpty();
  }

  @ParameterizedTest
  @MethodSource("witnessmark.entry.SampleEntries#all")
  void anEntryWithoutAFieldThatIsAlwaysThereDoesNotValidate(Entry entry) {
    ObjectNode good = json(entry);
    Set<String> optional =
        new TreeSet<>(
            Set.of(
                "acknowledged",
                "alternatives",
                "objections",
                "undoes",
                "roles",
                "sources",
                "head"));
    for (Class<?> record : List.of(entry.getClass(), Judged.class, Timing.class)) {
      Arrays.stream(record.getRecordComponents())
          .filter(c -> c.getType().getSimpleName().startsWith("Optional"))
          .forEach(c -> optional.add(c.getName()));
    }
    int checked = 0;
    for (String name : (Iterable<String>) good::fieldNames) {
      ObjectNode bad = good.deepCopy();
      bad.remove(name);
      if (!optional.contains(name) || name.equals("fastener") && entry instanceof Entry.Disposed) {
        assertThat(Schemas.faults("entry", bad)).as("without %s: %s", name, good).isNotEmpty();
        checked++;
      }
    }
    assertThat(checked).isGreaterThanOrEqualTo(4);
  }

  private static ObjectNode without(ObjectNode json, String name) {
    ObjectNode less = json.deepCopy();
    less.remove(name);
    return less;
  }

  @Test
  void aSignedEntryValidatesAndHalfOfASignatureDoesNot() {
    int signed = 0;
    for (Entry entry : SampleEntries.all()) {
      byte[] bytes = Signed.with(Signed.naming(EntryJson.bytes(entry), 12), new byte[64]);
      ObjectNode json = (ObjectNode) Schemas.parse(new String(bytes, StandardCharsets.UTF_8));
      boolean may = SIGNED.contains(json.path("kind").textValue());
      assertThat(Schemas.faults("entry", json).isEmpty()).as("%s", json).isEqualTo(may);
      assertThat(Schemas.faults("entry", without(json, "key"))).isNotEmpty();
      assertThat(Schemas.faults("entry", without(json, "signature"))).isNotEmpty();
      assertThat(EntryJson.bytes(EntryJson.read(bytes))).isEqualTo(EntryJson.bytes(entry));
      signed += may ? 1 : 0;
    }
    assertThat(signed).isEqualTo(SIGNED.size());
  }
}
