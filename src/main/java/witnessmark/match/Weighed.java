package witnessmark.match;

import java.util.List;

/**
 * A fastener that a reading could have been on, and what speaks for and against it.
 *
 * @param fastener its name
 * @param pass the pass that the reading would be judged against
 * @param role {@code expected}, {@code named} or {@code tight}
 * @param supports what speaks for it, in short sentences
 * @param against what speaks against it
 */
public record Weighed(
    String fastener, String pass, String role, List<String> supports, List<String> against) {
  public Weighed {
    supports = List.copyOf(supports);
    against = List.copyOf(against);
  }
}
