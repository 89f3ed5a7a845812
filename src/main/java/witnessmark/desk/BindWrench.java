package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.entry.Source;
import witnessmark.job.Shop;
import witnessmark.torque.Label;

/**
 * Says by which ways a wrench may report from now on.
 *
 * @param sources empty for any
 */
public record BindWrench(String serial, List<Source> sources, String by) implements Command {
  /**
   * @throws IllegalArgumentException when the serial number is no label, or a source stands twice
   */
  public BindWrench {
    Label.check("wrench", serial);
    sources = List.copyOf(sources);
    sources.forEach(
        s -> {
          if (!StationName.fits(s.link())) {
            throw new IllegalArgumentException(
                "link \""
                    + s.link()
                    + "\" is not allowed; use the name that the configuration has");
          }
          s.station().ifPresent(StationName::check);
        });
    if (sources.stream().distinct().count() != sources.size()) {
      throw new IllegalArgumentException("a source is named twice; name each once");
    }
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Ask.wrench(shop, serial);
    return List.of(new Entry.WrenchBound(at, serial, sources, by));
  }
}
