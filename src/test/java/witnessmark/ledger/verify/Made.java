package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * An entry as a test makes it: its bytes, and the columns its {@code trace} row must have, stated
 * rather than derived.
 */
record Made(byte[] bytes, Map<String, Object> trace) {
  static Made of(String json, Object... columns) {
    Map<String, Object> trace = new LinkedHashMap<>();
    for (int i = 0; i < columns.length; i += 2) {
      trace.put((String) columns[i], columns[i + 1]);
    }
    return new Made(json.replace('\'', '"').getBytes(StandardCharsets.UTF_8), trace);
  }
}
