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

  static void entries(JsonGenerator json, String name, List<SignedTree.Included> entries)
      throws IOException {
    json.writeArrayFieldStart(name);
    for (SignedTree.Included entry : entries) {
      json.writeStartObject();
      json.writeNumberField("entry", entry.n());
      json.writeBinaryField("leaf", entry.bytes());
      path(json, entry.path());
      json.writeEndObject();
    }
    json.writeEndArray();
  }

  /** Only a log whose key was changed has any. */
  static void vouchers(JsonGenerator json, List<SignedTree.Included> vouchers) throws IOException {
    if (!vouchers.isEmpty()) {
      entries(json, "vouchers", vouchers);
    }
  }

  static void path(JsonGenerator json, List<byte[]> path) throws IOException {
    json.writeArrayFieldStart("path");
    for (byte[] hash : path) {
      json.writeBinary(hash);
    }
    json.writeEndArray();
  }
}
