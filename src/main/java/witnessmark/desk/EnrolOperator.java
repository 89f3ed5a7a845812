package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.Label;

/**
 * Makes a badge known, or renames it.
 *
 * @param badge what a scanner reads from it
 * @param name as shown on records
 */
public record EnrolOperator(String badge, String name, Optional<String> by) implements Command {
  public EnrolOperator {
    Label.check("badge", badge);
    ScannerCommands.notOne("badge", badge);
    Label.check("name", name);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    return List.of(new Entry.OperatorEnrolled(at, badge, name, by));
  }
}
