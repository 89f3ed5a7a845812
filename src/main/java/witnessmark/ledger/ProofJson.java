package witnessmark.ledger;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.List;

/** The form that proofs in JSON share: an object with {@code v} 1 first; bytes are base64. */
final class ProofJson {
  private static final JsonFactory JSON = new JsonFactory();

  interface Fields {
    void write(JsonGenerator json) throws IOException;
  }

  private ProofJson() {}

  static byte[] write(Fields fields) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (JsonGenerator json = JSON.createGenerator(out)) {
      json.writeStartObject();
      json.writeNumberField("v", 1);
      fields.write(json);
      json.writeEndObject();
    } catch (IOException e) {
      throw new IllegalStateException("writing to memory does not fail", e);
    }
    out.write('\n');
    return out.toByteArray();
  }

  static void path(JsonGenerator json, List<byte[]> path) throws IOException {
    json.writeArrayFieldStart("path");
    for (byte[] hash : path) {
      json.writeBinary(hash);
    }
    json.writeEndArray();
  }
}
