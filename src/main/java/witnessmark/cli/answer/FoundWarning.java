package witnessmark.cli.answer;

import java.io.PrintWriter;
import witnessmark.record.UnitRecord;

/** Warns that a unit was worked on with a wrench that was found out of tolerance later. */
public final class FoundWarning {
  private FoundWarning() {}

  /** A line for each finding. */
  public static void print(PrintWriter err, UnitRecord unit) {
    unit.foundLater()
        .forEach(
            f ->
                err.println(
                    f.wrench()
                        + " was found out of tolerance after this (entry "
                        + f.entry()
                        + "); see recall "
                        + f.wrench()));
    err.flush();
  }
}
