package witnessmark.entry;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import com.fasterxml.jackson.datatype.jdk8.Jdk8Module;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Function;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;
import witnessmark.torque.Visible;
import witnessmark.torque.WrenchKind;

/** Entries as the exact bytes that the log keeps, and back. */
public final class EntryJson {
  private static final ObjectMapper MAPPER = mapper();
  private static final ObjectWriter WRITER = MAPPER.writerFor(Entry.class);
  private static final ObjectReader READER = MAPPER.readerFor(Entry.class);

  private EntryJson() {}

  /** The entry's bytes: one JSON object in UTF-8, fields in a fixed order, no line end. */
  public static byte[] bytes(Entry entry) {
    try {
      return WRITER.writeValueAsBytes(entry);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("an entry could not be written as JSON", e);
    }
  }

  /**
   * The entry that those bytes state.
   *
   * @throws NoEntry when they are no entry this program knows
   */
  public static Entry read(byte[] bytes) {
    Optional<Entry> torque = TorqueReader.read(bytes);
    return torque.isPresent() ? torque.get() : general(bytes);
  }

  /** Reads any kind. */
  static Entry general(byte[] bytes) {
    try {
      return READER.readValue(bytes);
    } catch (IOException e) {
      String why = String.valueOf(e.getMessage()).lines().findFirst().orElse("");
      throw new NoEntry("not an entry this program knows: " + Visible.of(why), e);
    }
  }

  private static ObjectMapper mapper() {
    SimpleModule words = new SimpleModule();
    text(words, Torque.class, Torque::toString, Torque::parse);
    text(words, Digits.class, Digits::text, Digits::new);
    text(words, Angle.class, Angle::toString, Angle::of);
    text(words, Direction.class, Direction::code, Direction::of);
    text(words, Verdict.class, Verdict::code, Verdict::of);
    text(words, WrenchKind.class, WrenchKind::code, WrenchKind::of);
    text(words, Instant.class, Moments::text, Moments::parse);
    word(words, Effect.class);
    word(words, Reason.class);
    word(words, Objection.class);
    word(words, Rule.class);
    word(words, Disposition.class);
    word(words, Meaning.class);
    word(words, Role.class);
    word(words, CalibrationEnd.class);
    return JsonMapper.builder()
        .addModule(new Jdk8Module())
        .addModule(words)
        .addMixIn(TorqueEvent.class, EventFields.class)
        .build();
  }

  /** How an event's fields are written: what came later to the form is absent, not null. */
  private interface EventFields {
    @JsonInclude(JsonInclude.Include.NON_EMPTY)
    Optional<Torque> breakaway();
  }

  private static <E extends Enum<E> & Word> void word(SimpleModule module, Class<E> type) {
    text(module, type, Word::code, code -> Words.of(type, code));
  }

  private static <T> void text(
      SimpleModule module, Class<T> type, Function<T, String> write, Function<String, T> read) {
    module.addSerializer(
        type,
        new StdSerializer<T>(type) {
          private static final long serialVersionUID = 1L;

          @Override
          public void serialize(T value, JsonGenerator out, SerializerProvider provider)
              throws IOException {
            out.writeString(write.apply(value));
          }
        });
    module.addDeserializer(
        type,
        new FromStringDeserializer<T>(type) {
          private static final long serialVersionUID = 1L;

          @Override
          protected T _deserialize(String text, DeserializationContext context) {
            return read.apply(text);
          }

          @Override
          public T deserialize(JsonParser in, DeserializationContext context) throws IOException {
            return read.apply(in.getText());
          }
        });
  }
}
