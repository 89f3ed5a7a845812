package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class EntryReaderTest {
  private final EntryReader reader = new EntryReader();
  private final EntryFields fields = new EntryFields();

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "[1] | expected one JSON object without anything around it, found other bytes",
        "` {'v':1,'kind':'x'}` | expected one JSON object without anything around it, found other bytes",
        "`{'v':1,'kind':'x'}\n` | expected one JSON object without anything around it, found other bytes",
        "`` | expected one JSON object without anything around it, found other bytes",
        "{'v':1,'kind':'x'}{} | expected one JSON object, found more after it",
        "{} | expected /v to be 1",
        "{'v':2,'kind':'x'} | expected /v to be 1",
        "{'v':'1','kind':'x'} | expected /v to be 1",
        "{'v':1.0,'kind':'x'} | expected /v to be 1",
        "{'v':1} | expected /kind to be a text",
        "{'v':1,'kind':7} | expected /kind to be a text",
        "{'v':1,'kind':''} | expected /kind to be a text",
        "{'v':1,'kind':'x','kind':'y'} | expected one JSON object, found: Duplicate field 'kind'",
        "{'v':1,'kind':'x','k\\u0069nd':'y'} | expected one JSON object, found: Duplicate field 'kind'",
        "{'v':1,'kind':'x','a':[{'b':1,'b':2}]} | expected one JSON object, found: Duplicate field 'b'",
      })
  void whatIsNoEntryIsToldWhy(String json, String sentence) {
    assertThat(read(json)).isEqualTo(sentence);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'v':1,'kind':'x',}",
        "{'v':1,'kind':'x','a':01}",
        "{'v':1,'kind':'x','a':NaN}",
        "{'v':1,'kind':'x','a':'\\q'}",
        "{'v':1,'kind':'x','a':['\\q']}",
        "{'v':1,'kind':'x','a':'\n'}",
        "{'v':1,'kind':'x',/**/'a':1}",
        "{'v':1,'kind':'x','a':{}",
        "{v:1,'kind':'x'}",
      })
  void whatIsNoJsonIsRefused(String json) {
    assertThat(read(json)).startsWith("expected one JSON object, found: ");
  }

  @Test
  void bytesThatAreNoUtf8AreRefused() {
    byte[] json = "{\"v\":1,\"kind\":\"x\",\"a\":\"?\"}".getBytes(StandardCharsets.US_ASCII);
    json[json.length - 3] = (byte) 0xff;
    assertThat(reader.read(json, fields)).startsWith("expected one JSON object, found: ");
  }

  @Test
  void anotherEncodingOfTheSameTextIsRefused() {
    byte[] json = "{\"v\":1,\"kind\":\"x\"}".getBytes(StandardCharsets.UTF_16LE);
    // One byte less, so that it also ends as an object must.
    byte[] cut = Arrays.copyOf(json, json.length - 1);
    assertThat(reader.read(cut, fields)).startsWith("expected one JSON object, found: ");
  }

  @Test
  void theWrenchOfTheEventGoesBeforeTheEntrysOwn() {
    assertThat(read("{'v':1,'kind':'x','event':{'wrench':'TW-0417'},'wrench':'TW-0418'}")).isNull();
    assertThat(column("wrench")).isEqualTo("TW-0417");
    read("{'v':1,'kind':'x','event':{'wrench':null},'wrench':'TW-0418'}");
    assertThat(column("wrench")).isEqualTo("TW-0418");
  }

  @Test
  void theOperatorIsTheEventsElseBysElseTheEntrysOwn() {
    read("{'v':1,'kind':'x','operator':'c','by':'b','event':{'operator':'a'}}");
    assertThat(column("operator")).isEqualTo("a");
    read("{'v':1,'kind':'x','operator':'c','by':'b','event':{}}");
    assertThat(column("operator")).isEqualTo("b");
    read("{'v':1,'kind':'x','operator':'c'}");
    assertThat(column("operator")).isEqualTo("c");
  }

  @ParameterizedTest
  @CsvSource({
    "0,0",
    "123,123",
    "-5,-5",
    "9223372036854775807,9223372036854775807",
    "9223372036854775808,",
    "1.0,",
    "1e3,",
    "null,",
    "'\"7\"',",
    "[7],",
  })
  void theNumberIsTheEventsIntegerOrNothing(String json, Long number) {
    assertThat(read("{'v':1,'kind':'x','number':9,'event':{'number':" + json + "}}")).isNull();
    assertThat(column("number")).isEqualTo(number);
  }

  @Test
  void fieldsBelowOtherFieldsAreNotTheEntrys() {
    assertThat(read("{'v':1,'kind':'x','a':{'station':'s','event':{'number':1}},'b':['job','j']}"))
        .isNull();
    assertThat(column("station")).isNull();
    assertThat(column("job")).isNull();
    assertThat(column("number")).isNull();
    assertThat(column("scope")).isEqualTo("none");
  }

  @ParameterizedTest
  @CsvSource({
    "log-opened,shop",
    "log-key-changed,shop",
    "operator-enrolled,shop",
    "operator-key-enrolled,shop",
    "operator-key-withdrawn,shop",
    "wrench-bound,shop",
    "wrench-enrolled,shop",
    "calibration-ruled,shop",
    "wrench-calibrated,shop",
    "calibration-ended,shop",
    "wrench-checked,job",
    "procedure-released,shop",
    "operator-at-station,shop",
    "job-opened,job",
    "whatever-comes,job",
  })
  void theScopeFollowsFromKindAndJob(String kind, String scope) {
    assertThat(read("{'v':1,'kind':'" + kind + "','job':'J-1'}")).isNull();
    assertThat(column("scope")).isEqualTo(scope);
  }

  @Test
  void textIsReadAsItsCharacters() {
    byte[] json =
        HexFormat.of()
            .parseHex("7b2276223a312c226b696e64223a2278222c226a6f62223a22c3845c75303061345c6e227d");
    assertThat(reader.read(json, fields)).isNull();
    assertThat(column("job")).isEqualTo("Ä¤\n");
  }

  private String read(String json) {
    return reader.read(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), fields);
  }

  private Object column(String name) {
    return fields.trace(Arrays.asList(EntryFields.TRACE).indexOf(name));
  }
}
