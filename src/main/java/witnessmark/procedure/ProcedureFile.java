package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import witnessmark.toml.FaultsException;
import witnessmark.toml.Section;
import witnessmark.toml.TomlFile;

/** Reads procedure files. */
public final class ProcedureFile {
  private static final int STEPS = 500;

  private ProcedureFile() {}

  /**
   * Reads the text of a procedure file.
   *
   * @param fileName the name to show in faults
   * @param text TOML 1.0, at most 1 048 576 characters
   * @throws FaultsException with every fault, by position, when anything in the text is wrong;
   *     nothing else is ever thrown for a text
   */
  public static Procedure parse(String fileName, String text) {
    TomlFile file = TomlFile.parse(fileName, text);
    Section root = file.root();
    if (!root.has("procedure")) {
      root.fault(
          "procedure", "the file has no [procedure]", "begin with its id, revision and title");
    }
    Optional<Header> header = root.section("procedure").map(ProcedureFile::header);
    int before = file.faults().size();
    List<Section> sections = root.sections("step");
    if (sections.isEmpty() && file.faults().size() == before) {
      root.fault("step", "the procedure has no steps", "write at least one [[step]]");
    }
    List<Draft> drafts = sections.stream().map(s -> new StepReader(s).read()).toList();
    if (drafts.size() > STEPS) {
      drafts
          .get(STEPS)
          .section()
          .fault(
              "kind",
              "the procedure has " + drafts.size() + " steps",
              "at most " + STEPS + " are allowed; split it");
    } else {
      References.check(drafts);
    }
    root.finish();
    file.orThrow();
    Header read = header.orElseThrow();
    return new Procedure(
        read.id().orElseThrow(),
        read.revision().orElseThrow(),
        read.title().orElseThrow(),
        read.unitPattern(),
        drafts.stream().map(d -> d.step().orElseThrow()).toList());
  }

  private record Header(
      Optional<String> id,
      Optional<String> revision,
      Optional<String> title,
      Optional<String> unitPattern) {}

  private static Header header(Section section) {
    Optional<String> id = label(section, "id", "give it, e.g. id = \"RAM-210\"");
    Optional<String> revision = label(section, "revision", "give it, e.g. revision = \"C\"");
    Optional<String> title =
        section
            .requiredText("title", "give a title for people")
            .flatMap(
                t ->
                    Written.checked(
                        section, "title", t, x -> Prose.line("title", x, StepReader.TITLE)));
    Optional<String> pattern =
        section
            .text("unit-pattern")
            .flatMap(t -> Written.checked(section, "unit-pattern", t, UnitPattern::new))
            .map(UnitPattern::text);
    section.finish();
    return new Header(id, revision, title, pattern);
  }

  private static Optional<String> label(Section section, String key, String allowed) {
    return section
        .requiredText(key, allowed)
        .flatMap(t -> Written.label(section, key, "procedure " + key, t));
  }
}
