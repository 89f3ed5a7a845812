package witnessmark.entry;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.Objects;
import java.util.Optional;

/**
 * A way by which a wrench may report: a link of the bridge, and of a link with several stations
 * perhaps one of them.
 *
 * @param link the link's name in the configuration
 * @param station the only station it may name; empty for all of the link
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Source(String link, Optional<String> station) {
  public Source {
    Objects.requireNonNull(link, "link");
    station = station == null ? Optional.empty() : station;
  }

  /**
   * Whether a reading came that way.
   *
   * @param channel as {@link Entry.TorqueTaken#source} has it
   * @param from the station that it came from
   */
  public boolean covers(String channel, String from) {
    boolean here = channel.equals("serial:" + link) || channel.startsWith("mqtt:" + link + ":");
    return here && station.filter(s -> !s.equals(from)).isEmpty();
  }

  /** {@code LINK} or {@code LINK/STATION}. */
  @Override
  public String toString() {
    return link + station.map(s -> "/" + s).orElse("");
  }
}
