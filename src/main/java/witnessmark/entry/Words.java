package witnessmark.entry;

import java.util.HashMap;
import java.util.Map;

/** The constants of the closed sets of words, by their codes. */
final class Words {
  private static final ClassValue<Map<String, Object>> BY_CODE =
      new ClassValue<>() {
        @Override
        protected Map<String, Object> computeValue(Class<?> type) {
          Map<String, Object> words = new HashMap<>();
          for (Object word : type.getEnumConstants()) {
            words.put(((Word) word).code(), word);
          }
          return words;
        }
      };

  private Words() {}

  /**
   * The constant of that code.
   *
   * @throws IllegalArgumentException when the set has none
   */
  static <E extends Enum<E> & Word> E of(Class<E> type, String code) {
    Object word = BY_CODE.get(type).get(code);
    if (word == null) {
      throw new IllegalArgumentException("unknown word " + code);
    }
    return type.cast(word);
  }
}
