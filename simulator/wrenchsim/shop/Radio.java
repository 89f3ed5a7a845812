package wrenchsim.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import wrenchsim.truth.Happening;
import wrenchsim.wrench.Store;

/** The radio in a wrench: sends each reading at once, or keeps it while it is out of range. */
final class Radio {
  private final Optional<Store> store;
  private final Random chance;
  private final List<Happening> kept = new ArrayList<>();

  /**
   * Readings that go out together.
   *
   * @param happenings what the readings tell of, oldest first
   * @param stored whether they were kept before
   * @param again whether all of them went out before
   */
  record Burst(List<Happening> happenings, boolean stored, boolean again) {
    Burst {
      happenings = List.copyOf(happenings);
    }
  }

  Radio(Optional<Store> store, Random chance) {
    this.store = store;
    this.chance = chance;
  }

  /** Whether it keeps readings that nobody has heard of. */
  boolean isAway() {
    return !kept.isEmpty();
  }

  /** Whether it is out of range for the next reading; asked once for each. */
  boolean isOutOfRange() {
    return store.isPresent() && (isAway() || chance.nextDouble() < store.get().away());
  }

  /** Sends a reading so many times; one marked as stored is kept until there are enough. */
  List<Burst> send(Happening happening, int copies) {
    if (!happening.stored()) {
      List<Burst> bursts = new ArrayList<>();
      for (int copy = 0; copy < copies; copy++) {
        bursts.add(new Burst(List.of(happening), false, copy > 0));
      }
      return bursts;
    }
    for (int copy = 0; copy < copies; copy++) {
      kept.add(happening);
    }
    return kept.size() >= store.orElseThrow().readings() ? comeBack() : List.of();
  }

  /** Comes into range and delivers what it kept, perhaps more than once. */
  List<Burst> comeBack() {
    List<Burst> bursts = new ArrayList<>();
    if (isAway()) {
      boolean twice = chance.nextDouble() < store.orElseThrow().twice();
      boolean half = chance.nextDouble() < store.orElseThrow().half();
      bursts.add(new Burst(kept, true, false));
      if (twice) {
        bursts.add(new Burst(kept, true, true));
      }
      if (half) {
        bursts.add(new Burst(kept.subList(kept.size() / 2, kept.size()), true, true));
      }
      kept.clear();
    }
    return bursts;
  }
}
