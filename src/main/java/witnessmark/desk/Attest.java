package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import witnessmark.entry.Entry;
import witnessmark.job.Shop;
import witnessmark.procedure.AttestStep;

/** Confirms an attest step. */
public record Attest(String job, String step, String by) implements Command {
  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Gate.due(Ask.job(shop, job), step, AttestStep.class, "attest");
    return List.of(new Entry.Attested(at, job, step, by));
  }
}
