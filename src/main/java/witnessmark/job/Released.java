package witnessmark.job;

import java.util.List;
import witnessmark.entry.Acknowledged;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;

/**
 * A released revision of a procedure.
 *
 * @param procedure its id
 * @param revision its revision
 * @param text the file as released
 * @param acknowledged findings about it that were looked at and let stand
 * @param entry the entry that released it
 */
public record Released(
    String procedure, String revision, String text, List<Acknowledged> acknowledged, long entry) {
  public Released {
    acknowledged = List.copyOf(acknowledged);
  }

  /** What the text says; it was checked before it was released. */
  public Procedure parse() {
    return ProcedureFile.parse(procedure + " revision " + revision, text);
  }
}
