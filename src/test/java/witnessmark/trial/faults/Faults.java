package witnessmark.trial.faults;

import java.util.List;

/** All faults, in the order of the page. */
final class Faults {
  private Faults() {}

  static List<Fault> all() {
    return List.of(new FullDisk());
  }
}
