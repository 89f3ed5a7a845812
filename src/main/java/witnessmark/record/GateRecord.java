package witnessmark.record;

import java.util.List;
import java.util.OptionalLong;
import witnessmark.procedure.Step;

/**
 * An attest or measure step: what a person had to do, who did it and when.
 *
 * @param step what was asked
 * @param done every confirmation or measurement, oldest first
 * @param by the entry it stands by; empty while it is open
 */
public record GateRecord(Step step, List<Numbered> done, OptionalLong by) {
  public GateRecord {
    done = List.copyOf(done);
  }
}
