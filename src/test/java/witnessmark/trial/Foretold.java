package witnessmark.trial;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;
import witnessmark.sight.Ability;
import witnessmark.sight.Announced;
import witnessmark.sight.Mistake;
import witnessmark.sight.Rack;
import witnessmark.sight.Sight;
import witnessmark.sight.Visibility;

/** What {@code procedure check} announces for a scene's procedure and wrenches. */
final class Foretold {
  private final Set<String> unseen = new HashSet<>();
  private final Set<String> codes = new TreeSet<>();

  Foretold(Scene scene) {
    for (Announced a : of(scene)) {
      if (a.visibility() == Visibility.NOT_SEEN) {
        unseen.add(a.mistake() + " " + a.step() + ":" + a.pass());
        codes.add(a.mistake().code());
      }
    }
  }

  static List<Announced> of(Scene scene) {
    Procedure procedure = ProcedureFile.parse("trial.toml", scene.procedure());
    Map<String, Ability> wrenches = new TreeMap<>();
    scene.wrenches().stream()
        .filter(w -> scene.enrolled().contains(w.serial()))
        .forEach(
            w ->
                wrenches.put(
                    w.serial(), new Ability(w.gauge().angle(), scene.habits().scans(), false)));
    return Sight.of(procedure, Rack.of(wrenches));
  }

  /**
   * Whether one of the mistakes was announced to leave no trace at a stage, as {@code hub:final}.
   */
  boolean unseen(List<Mistake> mistakes, String stage) {
    return mistakes.stream().anyMatch(m -> unseen.contains(m + " " + stage));
  }

  /** The mistakes that may leave no trace somewhere, by code. */
  Set<String> unseen() {
    return codes;
  }
}
