package witnessmark.sample;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;

/** One job's facts in the order in which they happened, and what became of each reading. */
final class Course {
  /** A pass of a fastener. */
  private record Place(String fastener, String pass) {
    String stage() {
      return fastener.substring(0, fastener.indexOf('/')) + ":" + pass;
    }
  }

  /**
   * What became of a reading.
   *
   * @param omission empty for a value of the process
   * @param first whether it was the first try there
   */
  record Fate(Pull pull, Optional<Omission> omission, boolean first) {}

  private final List<Pull> pulls = new ArrayList<>();
  private final List<Optional<Omission>> omissions = new ArrayList<>();
  private final Set<Integer> firsts = new HashSet<>();

  /** The index of the accepted reading that stands. */
  private final Map<Place, Integer> standing = new HashMap<>();

  /** The indexes of accepted readings that do not. */
  private final Map<Place, List<Integer>> fallen = new HashMap<>();

  private final Set<Place> tried = new HashSet<>();

  private Course() {}

  static List<Fate> of(List<Fact> facts) {
    Course course = new Course();
    facts.stream().sorted(Fact.IN_ORDER).forEach(course::take);
    List<Fate> fates = new ArrayList<>();
    for (int i = 0; i < course.pulls.size(); i++) {
      fates.add(new Fate(course.pulls.get(i), course.omissions.get(i), course.firsts.contains(i)));
    }
    return fates;
  }

  private void take(Fact fact) {
    if (fact instanceof Undone undone) {
      undone.fastener().ifPresent(f -> fall(place -> place.fastener().equals(f), Omission.UNDONE));
      fall(place -> undone.stages().contains(place.stage()), Omission.UNDONE);
    } else if (fact instanceof Pull pull) {
      take(pull);
    } else {
      throw new IllegalStateException("no course with " + fact.getClass());
    }
  }

  private void take(Pull pull) {
    int index = pulls.size();
    pulls.add(pull);
    omissions.add(pull.accepted() ? Optional.empty() : Optional.of(pull.omission()));
    Place place = new Place(pull.fastener(), pull.judged().pass().orElse(""));
    if (pull.attempt() && tried.add(place)) {
      firsts.add(index);
    }
    if (pull.loosens()) {
      fall(p -> p.fastener().equals(pull.fastener()), Omission.UNDONE);
    }
    if (pull.accepted()) {
      fall(place::equals, Omission.DONE_AGAIN);
      fallen
          .getOrDefault(place, List.of())
          .forEach(i -> omissions.set(i, Optional.of(Omission.DONE_AGAIN)));
      standing.put(place, index);
    }
  }

  private void fall(Predicate<Place> which, Omission why) {
    for (Place place : List.copyOf(standing.keySet())) {
      if (which.test(place)) {
        int index = standing.remove(place);
        omissions.set(index, Optional.of(why));
        fallen.computeIfAbsent(place, p -> new ArrayList<>()).add(index);
      }
    }
  }
}
