package witnessmark.certificate;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
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
  private static final JsonFactory JSON = new JsonFactory();

  public Proved {
    entries = Collections.unmodifiableSortedMap(new TreeMap<>(entries));
    bundle = bundle.clone();
  }

  /**
   * The entries of a proof that was made here, or that was found to hold.
   *
   * @throws IllegalArgumentException when the proof names no checkpoint
   */
  public static Proved of(SortedMap<Long, byte[]> entries, byte[] bundle) {
    return new Proved(entries, checkpoint(bundle), bundle);
  }

  /** The log's own name, the first line of its checkpoint. */
  public String origin() {
    return checkpoint.lines().findFirst().orElse("");
  }

  private static String checkpoint(byte[] bundle) {
    try (JsonParser json = JSON.createParser(bundle)) {
      json.nextToken();
      for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
        if (json.nextToken() == JsonToken.VALUE_STRING && name.equals("checkpoint")) {
          return json.getText();
        }
        json.skipChildren();
      }
    } catch (IOException e) {
      throw new IllegalArgumentException("the proof is not JSON", e);
    }
    throw new IllegalArgumentException("the proof names no checkpoint");
  }

  @Override
  public byte[] bundle() {
    return bundle.clone();
  }
}
