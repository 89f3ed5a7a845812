package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.CalibrationRule;

/** Says how wrenches of a type are to be calibrated from now on. */
public record RuleCalibration(WrenchKind kind, CalibrationRule rule, Optional<String> by)
    implements Command {
  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    return List.of(
        new Entry.CalibrationRuled(
            at,
            kind,
            rule.deviation(),
            rule.smallUpTo(),
            rule.smallDeviation(),
            rule.points(),
            rule.readings(),
            rule.months(),
            rule.operations(),
            by));
  }
}
