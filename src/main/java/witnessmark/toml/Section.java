package witnessmark.toml;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Function;
import org.tomlj.TomlArray;
import org.tomlj.TomlPosition;
import org.tomlj.TomlTable;

/**
 * One table of a TOML file. Readers never throw for a wrong value: they record a fault at its
 * position and return empty, so that one run lists every fault. {@link #finish} faults the keys
 * that nobody asked for.
 */
public final class Section {
  private final Faults faults;
  private final TomlTable table;
  private final TomlPosition own;
  private final String name;
  private final Set<String> known = new HashSet<>();

  Section(Faults faults, TomlTable table, TomlPosition own, String name) {
    this.faults = faults;
    this.table = table;
    this.own = own;
    this.name = name;
  }

  /** Whether the key stands in the table. */
  public boolean has(String key) {
    known.add(key);
    return table.get(List.of(key)) != null;
  }

  /** Whether the key's value is a number written without quotes. */
  public boolean isNumber(String key) {
    known.add(key);
    return table.get(List.of(key)) instanceof Number;
  }

  /** Whether the key's value is a list without items. */
  public boolean isEmptyList(String key) {
    known.add(key);
    return table.get(List.of(key)) instanceof TomlArray a && a.isEmpty();
  }

  /** The line of the key, or of the table where the key is missing; from 1. */
  public int line(String key) {
    return at(key).line();
  }

  /** The key's text. */
  public Optional<String> text(String key) {
    return typed(key, String.class, "a text in quotes");
  }

  /** The key's text, or a fault that it is missing. */
  public Optional<String> requiredText(String key, String allowed) {
    require(key, allowed);
    return text(key);
  }

  /** The key's text read by {@code reader}, whose IllegalArgumentException becomes the fault. */
  public <T> Optional<T> read(String key, String allowed, Function<String, T> reader) {
    return text(key).flatMap(t -> attempt(key, allowed, () -> reader.apply(t)));
  }

  /** Like {@link #read}, with a fault when the key is missing. */
  public <T> Optional<T> requiredRead(String key, String allowed, Function<String, T> reader) {
    require(key, allowed);
    return read(key, allowed, reader);
  }

  /** The key's integer within a range. */
  public OptionalLong integer(String key, long low, long high) {
    Optional<Long> value = typed(key, Long.class, "a whole number");
    if (value.isPresent() && (value.get() < low || value.get() > high)) {
      fault(key, key + " " + value.get() + " is out of range", low + " to " + high + " is allowed");
      return OptionalLong.empty();
    }
    return value.map(OptionalLong::of).orElse(OptionalLong.empty());
  }

  /** The key's true or false. */
  public Optional<Boolean> bool(String key) {
    return typed(key, Boolean.class, "true or false");
  }

  /** The key's list of texts; empty when the key is missing, a fault when an item is no text. */
  public Optional<List<String>> texts(String key) {
    return list(key, String.class, "a list of texts in quotes");
  }

  /** The key's list of whole numbers. */
  public Optional<List<Long>> integers(String key) {
    return list(key, Long.class, "a list of whole numbers");
  }

  /** The key's table. */
  public Optional<Section> section(String key) {
    return typed(key, TomlTable.class, "a table").map(t -> new Section(faults, t, at(key), key));
  }

  /** The key's tables, written {@code [[key]]}; none when the key is missing. */
  public List<Section> sections(String key) {
    Optional<TomlArray> array = typed(key, TomlArray.class, "tables written [[" + key + "]]");
    List<Section> found = new ArrayList<>();
    for (int i = 0; array.isPresent() && i < array.get().size(); i++) {
      TomlPosition position = array.get().inputPositionOf(i);
      if (array.get().get(i) instanceof TomlTable t) {
        found.add(new Section(faults, t, position, key));
      } else {
        faults.add(position, key + " is not a table", "write it as [[" + key + "]]");
      }
    }
    return found;
  }

  /** The keys of this table, in file order. */
  public List<String> keys() {
    return List.copyOf(table.keySet());
  }

  /** Records a fault at the key, or at the table where the key is missing. */
  public void fault(String key, String what, String allowed) {
    faults.add(at(key), what, allowed);
  }

  /**
   * Records a fault at a part of the key's text.
   *
   * @param text the key's text, as read
   * @param offset where the part begins in it
   */
  public void faultWithin(String key, String text, int offset, String what, String allowed) {
    faults.add(faults.within(at(key), text, offset), what, allowed);
  }

  /** Records a fault at item {@code index} of the key's list. */
  public void fault(String key, int index, String what, String allowed) {
    TomlPosition position =
        table.get(List.of(key)) instanceof TomlArray a && index < a.size()
            ? a.inputPositionOf(index)
            : at(key);
    faults.add(position, what, allowed);
  }

  /** Runs the reader; its IllegalArgumentException becomes a fault at the key. */
  public <T> Optional<T> attempt(
      String key, String allowed, java.util.function.Supplier<T> reader) {
    try {
      return Optional.of(reader.get());
    } catch (IllegalArgumentException e) {
      fault(key, String.valueOf(e.getMessage()), allowed);
      return Optional.empty();
    }
  }

  /** Faults every key that no reader asked for, naming the nearest known one. */
  public void finish() {
    for (String key : table.keySet()) {
      if (!known.contains(key)) {
        fault(key, "unknown key \"" + key + "\" in " + name, Nearest.hint(key, known));
      }
    }
  }

  private void require(String key, String allowed) {
    if (!has(key)) {
      faults.add(own, name + " has no \"" + key + "\"", allowed);
    }
  }

  private TomlPosition at(String key) {
    TomlPosition position = table.inputPositionOf(List.of(key));
    return position == null ? own : position;
  }

  private <T> Optional<T> typed(String key, Class<T> type, String allowed) {
    known.add(key);
    Object value = table.get(List.of(key));
    if (value != null && !type.isInstance(value)) {
      fault(key, "\"" + key + "\" is not " + allowed, "write " + allowed);
      return Optional.empty();
    }
    return Optional.ofNullable(type.cast(value));
  }

  private <T> Optional<List<T>> list(String key, Class<T> type, String allowed) {
    Optional<TomlArray> array = typed(key, TomlArray.class, allowed);
    if (array.isEmpty()) {
      return Optional.empty();
    }
    List<T> items = new ArrayList<>();
    for (int i = 0; i < array.get().size(); i++) {
      Object item = array.get().get(i);
      if (type.isInstance(item)) {
        items.add(type.cast(item));
      } else {
        fault(
            key,
            i,
            "item " + (i + 1) + " of \"" + key + "\" is of the wrong kind",
            "write " + allowed);
      }
    }
    return Optional.of(List.copyOf(items));
  }
}
