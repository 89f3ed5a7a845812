package witnessmark.pipeline;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import witnessmark.ledger.Draft;
import witnessmark.ledger.TraceRow;

/** An entry about a job with the row that docs/ledger-format.md derives, whatever it lacks. */
final class Forged {
  private Forged() {}

  static Draft draft(byte[] bytes) {
    try {
      JsonNode e = new ObjectMapper().readTree(bytes);
      TraceRow row =
          new TraceRow(
              text(e, "kind"),
              text(e, "at"),
              "job",
              text(e, "job"),
              null,
              text(e, "fastener"),
              null,
              null,
              text(e, "by"),
              null,
              null,
              null);
      return new Draft(bytes, row, Optional.empty());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String text(JsonNode entry, String name) {
    return entry.path(name).textValue();
  }
}
