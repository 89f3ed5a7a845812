package witnessmark.desk;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.procedure.MeasureStep;
import witnessmark.torque.Digits;

/** Enters the numbers of a measure step. Numbers outside the limits are recorded, too. */
public record Measure(String job, String step, List<Digits> values, String by) implements Command {
  public Measure {
    values = List.copyOf(values);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    MeasureStep due = Gate.due(Ask.job(shop, job), step, MeasureStep.class, "measure");
    if (values.size() != due.labels().size()) {
      throw new Declined(
          "Step "
              + step
              + " takes "
              + due.labels().size()
              + " number(s), "
              + String.join(", ", due.labels())
              + ", in "
              + due.unit()
              + "; got "
              + values.size()
              + ". Enter each of them.");
    }
    Optional<String> missed = missed(due);
    String text = missed.orElse("All limits are kept.");
    return List.of(new Entry.Measured(at, job, step, values, missed.isEmpty(), text, by));
  }

  private Optional<String> missed(MeasureStep due) {
    for (int i = 0; i < values.size(); i++) {
      BigDecimal value = values.get(i).value();
      if (value.compareTo(due.low().value()) < 0 || value.compareTo(due.high().value()) > 0) {
        return Optional.of(
            due.labels().get(i)
                + " "
                + values.get(i)
                + " "
                + due.unit()
                + " is outside "
                + due.low()
                + " to "
                + due.high()
                + ". Adjust and measure again.");
      }
    }
    List<BigDecimal> numbers = values.stream().map(Digits::value).toList();
    BigDecimal spread = Collections.max(numbers).subtract(Collections.min(numbers));
    return due.spread()
        .filter(s -> spread.compareTo(s.value()) > 0)
        .map(
            s ->
                "The numbers differ by "
                    + spread.toPlainString()
                    + " "
                    + due.unit()
                    + ", more than "
                    + s
                    + ". Adjust and measure again.");
  }
}
