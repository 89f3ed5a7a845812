package witnessmark.cli.answer;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.PrintWriter;
import java.util.LinkedHashMap;
import java.util.Map;

/** Answers for programs. */
public final class Json {
  private Json() {}

  /** Maps, lists, texts and numbers as JSON for reading. */
  public static void write(PrintWriter out, Object value) {
    try {
      out.println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(value));
      out.flush();
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("plain maps and lists can be written as JSON", e);
    }
  }

  /** An object of alternating names and values, in order; empty values are left out. */
  public static Map<String, Object> object(Object... pairs) {
    Map<String, Object> object = new LinkedHashMap<>();
    for (int i = 0; i < pairs.length; i += 2) {
      if (pairs[i + 1] != null) {
        object.put((String) pairs[i], pairs[i + 1]);
      }
    }
    return object;
  }
}
