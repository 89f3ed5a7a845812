package witnessmark.publish;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import witnessmark.docs.Schemas;
import witnessmark.pipeline.Bench;

/** Messages that the program must never tell: the schemas refuse each. */
class WrongMessagesTest {
  private static ObjectNode verdict() {
    return tree(VerdictEvent.of("shop-1", 7, Bench.on(Bench.group(2)).hit("50 N.m")));
  }

  private static ObjectNode expect() {
    Bench bench = Bench.on(Bench.group(2));
    return tree(ExpectMessage.of(Bench.STATION, Optional.of(bench.job())));
  }

  private static ObjectNode scanned() {
    return tree(ScanEvent.of("shop-1", 6, Bench.on(Bench.group(2)).scanned("a/1")));
  }

  private static ObjectNode tree(byte[] json) {
    return (ObjectNode) Schemas.parse(new String(json, StandardCharsets.UTF_8));
  }

  /** Sets the field to the JSON, or takes it away where there is none. */
  private static void change(ObjectNode object, String field, String json) {
    assertThat(object.has(field) || json != null).as(field).isTrue();
    if (json == null) {
      object.remove(field);
    } else {
      object.set(field, Schemas.parse(json));
    }
  }

  @Test
  void theMessagesThatAreChangedValidateBefore() {
    assertThat(Schemas.faults("verdict", verdict().toString())).isEmpty();
    assertThat(Schemas.faults("expect", expect().toString())).isEmpty();
    assertThat(Schemas.faults("scanned", scanned().toString())).isEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "specversion|",
        "id|\"057\"",
        "source|\"shop-1\"",
        "type|\"witnessmark.verdict.v1\"",
        "time|\"2026-11-25T10:02:03+01:00\"",
        "subject|7",
        "data|[]",
      })
  void aWrongEnvelopeOfAScanDoesNotValidate(String field, String json) {
    ObjectNode bad = scanned();
    change(bad, field, json);
    assertThat(Schemas.faults("scanned", bad.toString())).as("%s", bad).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "entry|",
        "station|",
        "scan|",
        "meaning|",
        "text|",
        "entry|\"6\"",
        "scan|\"\"",
        "station|\"bench 1\"",
        "job|\"\"",
        "fastener|3",
        "procedure|{}",
        "question|-1",
        "question|\"6\"",
        "operator|\" x\"",
        "meaning|\"position\"",
        "text|\"\"",
      })
  void wrongDataOfAScanDoNotValidate(String field, String json) {
    ObjectNode bad = scanned();
    change((ObjectNode) bad.path("data"), field, json);
    assertThat(Schemas.faults("scanned", bad.toString())).as("%s", bad).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "specversion|",
        "id|",
        "source|",
        "type|",
        "time|",
        "data|",
        "id|57",
        "id|\"057\"",
        "source|\"shop-1\"",
        "specversion|\"1.1\"",
        "time|\"2026-11-25T10:02:03+01:00\"",
        "subject|7",
        "data|[]",
      })
  void aWrongEnvelopeDoesNotValidate(String field, String json) {
    ObjectNode bad = verdict();
    change(bad, field, json);
    assertThat(Schemas.faults("verdict", bad.toString())).as("%s", bad).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "entry|",
        "station|",
        "wrench|",
        "torque|",
        "unit|",
        "direction|",
        "evaluation|",
        "low|",
        "high|",
        "bandunit|",
        "effect|",
        "reason|",
        "text|",
        "fastener|",
        "pass|",
        "unitcode|",
        "verdict|",
        "torque|50",
        "torque|\"-1\"",
        "unit|\"Nm\"",
        "unitcode|\"M92\"",
        "unitcode|\"85\"",
        "evaluation|\"NotOK\"",
        "verdict|\"over-torque\"",
        "verdict|\"good\"",
        "effect|\"done\"",
        "reason|\"several-possible\"",
        "reason|\"guessed\"",
        "objections|[]",
        "objections|[\"too-old\"]",
        "assigns|\"3\"",
        "rule|\"guarded\"",
        "rule|\"strict\"",
        "guard|\"0.5\"",
        "guardfactor|\"1\"",
        "atfastener|50",
        "event|-1",
        "event|\"1\"",
        "entry|\"7\"",
      })
  void wrongDataDoNotValidate(String field, String json) {
    ObjectNode bad = verdict();
    change((ObjectNode) bad.path("data"), field, json);
    assertThat(Schemas.faults("verdict", bad.toString())).as("%s", bad).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "station|",
        "state|",
        "job|",
        "unit|",
        "procedure|",
        "revision|",
        "done|",
        "total|",
        "text|",
        "expect|",
        "state|\"idle\"",
        "state|\"complete\"",
        "state|\"waiting\"",
        "done|\"7\"",
        "total|-1",
        "expect|{}",
        "expect|[{}]",
        "expect|[{\"step\":\"a\"}]",
        "expect|[{\"fastener\":\"a/1\"}]",
        "expect|[{\"step\":\"a\",\"statement\":\"s\",\"title\":\"t\",\"entry\":7}]",
        "station|\"bench 1\"",
      })
  void aWrongExpectationDoesNotValidate(String field, String json) {
    ObjectNode bad = expect();
    change(bad, field, json);
    assertThat(Schemas.faults("expect", bad.toString())).as("%s", bad).isNotEmpty();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "step|",
        "fastener|",
        "pass|",
        "low|",
        "high|",
        "unit|",
        "title|",
        "low|45",
        "unit|\"Nm\"",
        "anglelow|\"20\"",
        "wrenches|[]",
        "target|\"-1\"",
        "targetunit|\"Nm\"",
        "pulllow|\"40\"",
        "pulltarget|\"40\"",
        "acceptance|\"guarded\"",
        "acceptance|\"simple\"",
        "guardfactor|\"1\"",
        "statement|\"s\"",
        "labels|[\"left\"]",
      })
  void aWrongFastenerToTightenDoesNotValidate(String field, String json) {
    ObjectNode bad = expect();
    change((ObjectNode) bad.path("expect").get(0), field, json);
    assertThat(Schemas.faults("expect", bad.toString())).as("%s", bad).isNotEmpty();
  }
}
