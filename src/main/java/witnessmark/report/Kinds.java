package witnessmark.report;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import witnessmark.entry.Entry;

/** The kind words of entries. */
public final class Kinds {
  private static final Map<Class<?>, String> WORDS =
      Arrays.stream(Entry.class.getAnnotation(JsonSubTypes.class).value())
          .collect(Collectors.toMap(JsonSubTypes.Type::value, JsonSubTypes.Type::name));

  private Kinds() {}

  /** All of them, in alphabetical order. */
  public static List<String> all() {
    return WORDS.values().stream().sorted().toList();
  }

  static String of(Entry entry) {
    return WORDS.get(entry.getClass());
  }
}
