package witnessmark.job;

import witnessmark.procedure.Procedure;
import witnessmark.procedure.ProcedureFile;

/**
 * A released revision of a procedure.
 *
 * @param procedure its id
 * @param revision its revision
 * @param text the file as released
 * @param entry the entry that released it
 */
public record Released(String procedure, String revision, String text, long entry) {
  /** What the text says; it was checked before it was released. */
  public Procedure parse() {
    return ProcedureFile.parse(procedure + " revision " + revision, text);
  }
}
