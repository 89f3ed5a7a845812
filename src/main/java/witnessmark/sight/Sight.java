package witnessmark.sight;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import witnessmark.procedure.Layout;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.Stages;

/**
 * Says beforehand which mistakes at the bench the record will show. What it announces is the least
 * that the readings of the weakest wrench show: the rules are those by which {@code match} places
 * readings, and one that may go either way is announced as the worse.
 */
public final class Sight {
  private Sight() {}

  /**
   * What is announced, by step and pass in file order.
   *
   * @param procedure as read by {@link ProcedureFile}
   */
  public static List<Announced> of(Procedure procedure, Rack rack) {
    Layout layout = new Layout(Stages.of(procedure));
    List<Announced> said = new ArrayList<>();
    layout
        .tightening()
        .forEach(
            stage -> {
              Ability ability = rack.at(Layout.step(stage), Layout.pass(stage));
              said.addAll(at(new Case(layout, stage, ability)));
            });
    return List.copyOf(said);
  }

  private static List<Announced> at(Case at) {
    List<Announced> said = new ArrayList<>();
    SecondHits.announce(at, said);
    Misplaced.announce(at, said);
    Torques.announce(at, said);
    Turns.announce(at, said);
    said.sort(Comparator.comparing(Announced::mistake));
    return said;
  }
}
