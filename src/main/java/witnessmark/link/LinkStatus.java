package witnessmark.link;

import java.time.Instant;
import java.util.Objects;

/**
 * How a link stands, in words for the person who looks after it.
 *
 * @param name the link's name in the configuration
 * @param detail what is in the way and what to do about it, or where it is connected
 * @param since when it last came up, or last ceased to be up
 */
public record LinkStatus(String name, LinkState state, String detail, Instant since) {
  public LinkStatus {
    Objects.requireNonNull(name, "name");
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(detail, "detail");
    Objects.requireNonNull(since, "since");
  }
}
