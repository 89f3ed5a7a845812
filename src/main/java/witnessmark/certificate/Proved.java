package witnessmark.certificate;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * Entries with their proof.
 *
 * @param entries the exact bytes by number
 * @param checkpoint the signed note that they are proved under
 * @param bundle the proof as handed out, whose checkpoint and entries these are
 */
public record Proved(SortedMap<Long, byte[]> entries, String checkpoint, byte[] bundle) {
  public Proved {
    entries = Collections.unmodifiableSortedMap(new TreeMap<>(entries));
    bundle = bundle.clone();
  }

  @Override
  public byte[] bundle() {
    return bundle.clone();
  }
}
