package witnessmark.procedure;

import java.util.List;
import java.util.Optional;
import witnessmark.toml.Section;

/**
 * A step as far as it could be read: its names serve the checks across steps even where its values
 * are faulty.
 *
 * @param id empty where it is missing or malformed
 * @param kind empty where it is missing or unknown
 * @param passes at least one; a step that is not a tighten step counts as one pass
 * @param step present where nothing of the step was faulty
 */
record Draft(
    Section section,
    String id,
    Optional<String> kind,
    Optional<List<Prerequisite>> after,
    List<DraftPass> passes,
    Optional<Step> step) {

  /** A pass as far as it could be read. */
  record DraftPass(Section section, String name, List<Prerequisite> after, Optional<Pass> pass) {}

  boolean tighten() {
    return kind.filter("tighten"::equals).isPresent();
  }
}
