package witnessmark.record;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import witnessmark.job.Shop;
import witnessmark.wrench.Wrench;

/** Which wrenches and persons had a part in a job. */
final class Cast {
  private final List<Attempt> readings;

  Cast(List<Attempt> attempts, List<Attempt> late) {
    this.readings = Stream.concat(attempts.stream(), late.stream()).toList();
  }

  /** Once for each calibration that counted for a reading. */
  List<Wrench> wrenches() {
    return readings.stream()
        .flatMap(a -> a.wrench().stream())
        .distinct()
        .sorted(Comparator.comparing(Wrench::serial).thenComparing(Wrench::enrolled))
        .toList();
  }

  List<String> unknownWrenches() {
    return readings.stream()
        .filter(a -> a.wrench().isEmpty())
        .map(a -> a.taken().event().wrench())
        .distinct()
        .sorted()
        .toList();
  }

  List<Person> people(List<List<Numbered>> deeds, Shop shop) {
    Set<String> badges = new TreeSet<>();
    readings.forEach(a -> a.operator().ifPresent(badges::add));
    deeds.stream().flatMap(List::stream).forEach(n -> ByWhom.of(n.entry()).ifPresent(badges::add));
    return badges.stream()
        .map(b -> new Person(b, Optional.ofNullable(shop.operators().get(b))))
        .toList();
  }
}
