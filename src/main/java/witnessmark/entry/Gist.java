package witnessmark.entry;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.time.Instant;
import java.util.Optional;
import witnessmark.torque.Torque;

/**
 * What of a torque entry counts for the joint it is about, for those who read very many: the words
 * and the bytes as received are passed over.
 *
 * @param wrench the wrench's serial number
 * @param torque as it was shown
 * @param moment when it happened
 * @param place where it stands in its job
 * @param job empty where it met none
 * @param placed what was decided about it
 */
public record Gist(
    String wrench,
    Torque torque,
    Instant moment,
    Instant place,
    Optional<String> job,
    Placed placed) {
  private static final JsonFactory FACTORY = new JsonFactory();

  /**
   * A decision, for the joint.
   *
   * @param low lowest acceptable torque, as text
   * @param high highest acceptable torque, as text
   * @param atFastener the torque at the fastener, as text, where an adapter sits between
   */
  public record Placed(
      Optional<String> fastener,
      Optional<String> pass,
      Effect effect,
      Optional<String> low,
      Optional<String> high,
      Optional<String> atFastener) {
    /** Of a whole decision. */
    public static Placed of(Judged judged) {
      return new Placed(
          judged.fastener(),
          judged.pass(),
          judged.effect(),
          judged.low(),
          judged.high(),
          judged.atFastener());
    }
  }

  /** Of a whole entry. */
  public static Gist of(Entry.TorqueTaken taken) {
    return new Gist(
        taken.event().wrench(),
        taken.event().torque(),
        taken.moment(),
        taken.place(),
        taken.job(),
        Placed.of(taken.judged()));
  }

  /**
   * Of an entry's bytes; empty where they are of another kind.
   *
   * @throws IllegalArgumentException when they are no entry this program knows
   */
  public static Optional<Gist> read(byte[] bytes) {
    try (JsonParser json = FACTORY.createParser(bytes)) {
      if (json.nextToken() == JsonToken.START_OBJECT
          && "kind".equals(json.nextFieldName())
          && !"torque".equals(json.nextTextValue())) {
        return Optional.empty();
      }
      Optional<Gist> gist = new Passage(json).gist();
      if (gist.isPresent()) {
        return gist;
      }
    } catch (IOException | IllegalArgumentException | java.time.DateTimeException e) {
      // the general reader says what is wrong
    }
    return EntryJson.read(bytes) instanceof Entry.TorqueTaken t
        ? Optional.of(of(t))
        : Optional.empty();
  }

  /** One pass over an entry's tokens. */
  private static final class Passage {
    private final JsonParser json;
    private String wrench;
    private String torque;
    private String at;
    private String moment;
    private boolean late;
    private String job;
    private String fastener;
    private String pass;
    private String effect;
    private String low;
    private String high;
    private String atFastener;

    Passage(JsonParser json) {
      this.json = json;
    }

    Optional<Gist> gist() throws IOException {
      for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
        JsonToken token = json.nextToken();
        if (token == JsonToken.START_OBJECT && name.equals("event")) {
          event();
        } else if (token == JsonToken.VALUE_STRING) {
          text(name);
        } else if (token == JsonToken.VALUE_TRUE && name.equals("late")) {
          late = true;
        } else {
          json.skipChildren();
        }
      }
      boolean whole = json.currentToken() == JsonToken.END_OBJECT;
      return whole && wrench != null && torque != null && at != null && moment != null
          ? Optional.of(made())
          : Optional.empty();
    }

    private void event() throws IOException {
      for (String name = json.nextFieldName(); name != null; name = json.nextFieldName()) {
        boolean text = json.nextToken() == JsonToken.VALUE_STRING;
        if (text && name.equals("wrench")) {
          wrench = json.getText();
        } else if (text && name.equals("torque")) {
          torque = json.getText();
        } else {
          json.skipChildren();
        }
      }
    }

    private void text(String name) throws IOException {
      switch (name) {
        case "at" -> at = json.getText();
        case "moment" -> moment = json.getText();
        case "job" -> job = json.getText();
        case "fastener" -> fastener = json.getText();
        case "pass" -> pass = json.getText();
        case "effect" -> effect = json.getText();
        case "low" -> low = json.getText();
        case "high" -> high = json.getText();
        case "atFastener" -> atFastener = json.getText();
        default -> {
          // passed over
        }
      }
    }

    private Gist made() {
      Instant happened = Moments.parse(moment);
      return new Gist(
          wrench,
          Torque.parse(torque),
          happened,
          late ? happened : Moments.parse(at),
          Optional.ofNullable(job),
          new Placed(
              Optional.ofNullable(fastener),
              Optional.ofNullable(pass),
              Words.of(Effect.class, effect == null ? "" : effect),
              Optional.ofNullable(low),
              Optional.ofNullable(high),
              Optional.ofNullable(atFastener)));
    }
  }
}
