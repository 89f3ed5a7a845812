package witnessmark.doctor;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;

/**
 * What a bridge says of itself.
 *
 * @param since when it started; empty where it does not say so
 * @param waiting messages that it heard and that are not on record yet
 * @param notKept messages that it heard and that nobody has any more
 */
record Health(String state, String reason, String since, long waiting, long notKept) {
  /** Reads a health message; one that is none says nothing. */
  static Health read(byte[] message) {
    JsonNode health;
    ObjectMapper mapper = new ObjectMapper();
    try {
      JsonNode read = mapper.readTree(message);
      health = read == null ? mapper.createObjectNode() : read;
    } catch (IOException e) {
      health = mapper.createObjectNode(); // nobody's health
    }
    return new Health(
        health.path("state").asText(),
        health.path("reason").asText(),
        health.path("since").asText(),
        health.path("waiting").asLong(),
        health.path("notkept").asLong());
  }

  /** Whether it is of a bridge at work. */
  boolean alive() {
    return state.equals("ok") || degraded();
  }

  boolean degraded() {
    return state.equals("degraded");
  }
}
