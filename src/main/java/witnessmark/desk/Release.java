package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.procedure.Procedure;

/**
 * Releases a procedure file under its revision.
 *
 * @param procedure what the file says, already checked
 * @param text the file, unchanged
 */
public record Release(Procedure procedure, String text, Optional<String> by) implements Command {
  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Optional<Released> same = shop.released(procedure.id(), procedure.revision());
    if (same.isPresent()) {
      throw new Declined(
          "Revision "
              + procedure.revision()
              + " of "
              + procedure.id()
              + " was released by entry "
              + same.get().entry()
              + (same.get().text().equals(text)
                  ? ", with this very text: nothing to do."
                  : ", with another text. A released revision never changes: raise the revision."));
    }
    return List.of(new Entry.ProcedureReleased(at, procedure.id(), procedure.revision(), text, by));
  }
}
