package witnessmark.decode;

import java.util.List;
import java.util.Map;

/** A JSON value as it was written: numbers keep their digits. */
sealed interface Json {
  /** What it is, in words for a reason. */
  String kind();

  /** A string. */
  record Text(String text) implements Json {
    @Override
    public String kind() {
      return "a text";
    }
  }

  /** A number, by its digits. */
  record Number(String digits) implements Json {
    @Override
    public String kind() {
      return "a number";
    }
  }

  /** {@code true} or {@code false}. */
  record Truth(boolean value) implements Json {
    @Override
    public String kind() {
      return "true or false";
    }
  }

  /** {@code null}. */
  record Nothing() implements Json {
    @Override
    public String kind() {
      return "null";
    }
  }

  /** An array. */
  record Items(List<Json> items) implements Json {
    @Override
    public String kind() {
      return "an array";
    }
  }

  /** An object; no name stands twice. */
  record Fields(Map<String, Json> fields) implements Json {
    @Override
    public String kind() {
      return "an object";
    }
  }
}
