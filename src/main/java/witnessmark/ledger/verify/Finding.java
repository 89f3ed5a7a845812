package witnessmark.ledger.verify;

import java.util.Objects;

/**
 * One thing wrong in a ledger.
 *
 * @param place the entry, entries or row it is about
 * @param sentence what is wrong with it
 */
public record Finding(Place place, String sentence) {
  public Finding {
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(sentence, "sentence");
  }

  /** {@code place: sentence}, without control characters a changed row could send to a terminal. */
  @Override
  public String toString() {
    return (place + ": " + sentence).replaceAll("\\p{Cntrl}", "?");
  }
}
