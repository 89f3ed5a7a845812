package witnessmark.log;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.LayoutBase;
import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.HashSet;
import java.util.Set;
import org.slf4j.event.KeyValuePair;

/**
 * An event as one JSON object on a line of its own: {@code time}, {@code level}, {@code logger},
 * {@code message}, then the event's own keys with their values as texts, then {@code error}.
 * Nothing but ASCII is written, so that no character of a value does anything to a terminal.
 */
final class JsonLayout extends LayoutBase<ILoggingEvent> {
  private final JsonFactory json =
      JsonFactory.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

  @Override
  public String doLayout(ILoggingEvent event) {
    StringWriter line = new StringWriter(250);
    try (JsonGenerator out = json.createGenerator(line)) {
      Set<String> names = new HashSet<>();
      out.writeStartObject();
      field(out, names, "time", TextLayout.TIME.format(event.getInstant()));
      field(out, names, "level", event.getLevel().toString());
      String logger = event.getLoggerName();
      field(out, names, "logger", logger.substring(logger.lastIndexOf('.') + 1));
      field(out, names, "message", event.getFormattedMessage());
      if (event.getKeyValuePairs() != null) {
        for (KeyValuePair pair : event.getKeyValuePairs()) {
          field(out, names, pair.key, String.valueOf(pair.value));
        }
      }
      if (event.getThrowableProxy() != null) {
        field(out, names, "error", Cause.of(event.getThrowableProxy()));
      }
      out.writeEndObject();
    } catch (IOException e) {
      throw new UncheckedIOException("a text can always be written", e);
    }
    return line.append('\n').toString().replace("\u007f", "\\u007F");
  }

  /** A name stands once in an object. */
  private static void field(JsonGenerator out, Set<String> names, String name, String value)
      throws IOException {
    if (names.add(name)) {
      out.writeStringField(name, value);
    }
  }
}
