package witnessmark.trial.faults;

import java.util.List;

/** All faults, in the order of the page. */
final class Faults {
  private Faults() {}

  static List<Fault> all() {
    return List.of(
        new Killed(),
        new FullDisk(),
        new RefusingDisk(),
        new ReadOnlyDisk(),
        new LedgerLost(),
        new BrokerKilled(),
        new BrokerForgets(),
        new NetworkCut(),
        new CablePulled(),
        new Flood(),
        new TwoDaemons(),
        new CommandsMeanwhile(),
        new LongReader(),
        new ClockSteps(),
        new Damaged());
  }
}
