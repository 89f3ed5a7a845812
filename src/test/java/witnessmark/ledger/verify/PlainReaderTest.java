package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the quick reader takes, the parser of all JSON takes too, and reads the same. */
class PlainReaderTest {
  private static final int COUNT = Integer.getInteger("fuzz.count", 50_000);

  private static final String[] WORDS = {
    "{",
    "}",
    "[",
    "]",
    "\"",
    ",",
    ":",
    "\\",
    "\\\"",
    "\\u0041",
    "\\q",
    " ",
    "\n",
    "null",
    "true",
    "tru",
    "0",
    "01",
    "-1",
    "1.5",
    "1e3",
    "123456789012345678",
    "9223372036854775808",
    "\"v\":1",
    "\"kind\":\"x\"",
    "\"job\":\"J-1\"",
    "\"event\":{",
    "\"number\":7",
    "\"wrench\":null",
    "\u00e4",
    "\u001e",
    "\u0000",
    "\u007f",
    "\"\":1",
    "[[1,2],{\"a\":{}}]",
    "\"a-name-of-more-than-16\":1"
  };

  private final PlainReader plain = new PlainReader();
  private final EntryReader reader = new EntryReader();

  private static List<Object> all(EntryFields fields) {
    List<Object> all = new ArrayList<>();
    for (int i = 0; i < EntryFields.TRACE.length; i++) {
      all.add(fields.trace(i));
    }
    for (Field field : Field.values()) {
      all.add(fields.text(field));
    }
    return all;
  }

  /** Whether the quick reader takes it; asserts that it is right to. */
  private boolean takes(byte[] bytes, String what) {
    EntryFields quick = new EntryFields();
    if (!plain.read(bytes, quick)) {
      return false;
    }
    EntryFields slow = new EntryFields();
    assertThat(reader.parse(bytes, slow)).as(what).isNull();
    assertThat(all(quick)).as(what).isEqualTo(all(slow));
    return true;
  }

  private boolean takes(String json) {
    String text = json.replace('\'', '"');
    return takes(text.getBytes(StandardCharsets.UTF_8), text);
  }

  @Test
  void entriesAsTheBridgeWritesThemAreTaken() {
    long taken =
        Shop.of(600).entries.stream().filter(made -> takes(made.bytes(), made.toString())).count();
    assertThat(taken).isGreaterThan(500);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{'v':1,'kind':'x'}",
        "{'kind':'x','a':{},'b':[],'c':[1,'s',null,true,false,{'a':1}],'v':1}",
        "{'v':1,'kind':'x','text':'a \\\" \\\\ \\/ \\n b','at':'','':0}",
        "{'v':1,'kind':'x','wrench':'TW-0417','event':{'wrench':'TW-0418','number':0,'operator':'b'}}",
        "{'v':1,'kind':'x','event':{'number':999999999999999999,'a':{'number':1,'wrench':'w'}}}",
        "{'v':1,'kind':'x','a':{'v':2,'kind':3,'job':'J-1','event':{'number':5}}}",
        "{'v':1,'kind':'x','event':[{'number':1}],'job':{'job':'J-1'},'number':7}",
        "{'v':1,'kind':'x','a':{'b':1},'b':{'b':1}}",
        "{'v':1,'kind':'x','fingerprint-1234':1,'fingerprint-1235':2}"
      })
  void plainEntriesAreTaken(String json) {
    assertThat(takes(json)).isTrue();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "{}",
        "{'v':1}",
        "{'v':1,'kind':''}",
        "{'v':1,'kind':7}",
        "{'v':2,'kind':'x'}",
        "{'v':10,'kind':'x'}",
        "{'v':1.0,'kind':'x'}",
        "{'v':'1','kind':'x'}",
        "{'v':1,'kind':'x'} ",
        "{'v':1,'kind':'x',}",
        "{'v':1,'kind':'x'",
        "{'v':1,'kind':'x'}{}",
        "{'v':1,'kind':'x','kind':'x'}",
        "{'v':1,'kind':'x','a':{'b':1,'b':2}}",
        "{'v':1,'kind':'x','a':01}",
        "{'v':1,'kind':'x','a':1.5}",
        "{'v':1,'kind':'x','a':-1}",
        "{'v':1,'kind':'x','a':tru}",
        "{'v':1,'kind':'x','a':nullx}",
        "{'v':1,'kind':'x','a':'\\q'}",
        "{'v':1,'kind':'x','a':'\\u0041'}",
        "{'v':1,'kind':'x\\n'}",
        "{'v':1,'kind':'x','a':'\u00e4'}",
        "{'v':1,'kind':'x','a':'\u001e'}",
        "{'v':1,'kind':'x','a':'\\",
        "{'v':1,'kind':'x','a':[[[[[[[[[[[[[[[[[[]]]]]]]]]]]]]]]]]]}",
        "{'v':1,'kind':'x','event':{'number':1234567890123456789}}",
        "{'v':1,'kind':'x','a-name-too-long-for-it':1}"
      })
  void allOthersAreLeftToTheParser(String json) {
    assertThat(takes(json)).isFalse();
  }

  @Test
  void moreNamesThanThereIsRoomForAreLeftToTheParser() {
    StringBuilder json = new StringBuilder("{'v':1,'kind':'x'");
    for (int i = 0; i < 126; i++) {
      json.append(",'n").append(i).append("':1");
    }
    assertThat(takes(json + "}")).isTrue();
    assertThat(takes(json + ",'more':1}")).isFalse();
  }

  @Test
  void whateverIsChangedInAnEntryBothReadTheSame() {
    long seed = new Random().nextLong();
    Random random = new Random(seed);
    List<Made> entries = Shop.of(200).entries;
    int taken = 0;
    for (int round = 0; round < COUNT; round++) {
      byte[] bytes = entries.get(random.nextInt(entries.size())).bytes();
      for (int changes = random.nextInt(4); changes > 0; changes--) {
        bytes = changed(bytes, random);
      }
      taken += takes(bytes, "seed " + seed + ", round " + round) ? 1 : 0;
    }
    assertThat(taken).as("seed %d", seed).isBetween(COUNT / 10, COUNT * 9 / 10);
  }

  private static byte[] changed(byte[] bytes, Random random) {
    int at = random.nextInt(bytes.length + 1);
    int to = Math.min(bytes.length, at + random.nextInt(12));
    byte[] put =
        switch (random.nextInt(5)) {
          case 0 -> new byte[] {(byte) random.nextInt(256)};
          case 1 -> new byte[0];
          case 2 -> {
            int from = random.nextInt(bytes.length);
            yield Arrays.copyOfRange(bytes, from, Math.min(bytes.length, from + 20));
          }
          default -> {
            to = at;
            yield WORDS[random.nextInt(WORDS.length)].getBytes(StandardCharsets.UTF_8);
          }
        };
    byte[] all = Arrays.copyOf(bytes, at + put.length + bytes.length - to);
    System.arraycopy(put, 0, all, at, put.length);
    System.arraycopy(bytes, to, all, at + put.length, bytes.length - to);
    return all;
  }
}
