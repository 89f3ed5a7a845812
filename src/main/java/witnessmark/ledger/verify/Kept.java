package witnessmark.ledger.verify;

import java.util.Objects;

/**
 * A checkpoint that somebody kept elsewhere.
 *
 * @param name how findings call it
 * @param note the signed note
 */
public record Kept(String name, String note) {
  public Kept {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(note, "note");
  }
}
