package witnessmark.toml;

import java.util.List;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;
import org.tomlj.TomlPosition;

/** A TOML text being read: its root table and the faults found so far. */
public final class TomlFile {
  private static final String TOML = "the file must be TOML 1.0";

  /** So many places that are no TOML are listed; after one, most others follow from it. */
  static final int LISTED = 100;

  private final Faults faults;
  private final Section root;

  private TomlFile(Faults faults, Section root) {
    this.faults = faults;
    this.root = root;
  }

  /**
   * Parses the text; a byte order mark before it is ignored.
   *
   * @param file the name to show in faults
   * @throws FaultsException when it is not TOML, or too large or too deeply nested to be read
   */
  public static TomlFile parse(String file, String text) {
    String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
    Faults faults = new Faults(file, plain);
    Bounds.check(plain)
        .ifPresent(
            e -> {
              faults.add(e.position(), e.what(), e.allowed());
              throw new FaultsException(faults.sorted());
            });
    TomlParseResult result = parse(plain, faults);
    list(result.errors(), faults);
    if (result.hasErrors()) {
      throw new FaultsException(faults.sorted());
    }
    return new TomlFile(
        faults, new Section(faults, result, TomlPosition.positionAt(1, 1), "the file"));
  }

  private static void list(List<TomlParseError> errors, Faults faults) {
    errors.stream().limit(LISTED).forEach(e -> faults.add(e.position(), e.getMessage(), TOML));
    if (errors.size() > LISTED) {
      int more = errors.size() - LISTED;
      faults.add(
          errors.get(LISTED).position(),
          "from here on " + more + " more places are no TOML",
          "mend those before first");
    }
  }

  /** The library reports most errors in its result but throws those in the key of a table. */
  private static TomlParseResult parse(String text, Faults faults) {
    try {
      return Toml.parse(text);
    } catch (TomlParseError e) {
      faults.add(e.position(), e.getMessage(), TOML);
      throw new FaultsException(faults.sorted());
    }
  }

  public Section root() {
    return root;
  }

  /** The faults found so far, by position. */
  public List<Fault> faults() {
    return faults.sorted();
  }

  /**
   * Ends the reading.
   *
   * @throws FaultsException when any fault was found
   */
  public void orThrow() {
    if (!faults().isEmpty()) {
      throw new FaultsException(faults());
    }
  }
}
