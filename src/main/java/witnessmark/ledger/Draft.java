package witnessmark.ledger;

import java.util.Optional;

/**
 * An entry to be appended.
 *
 * @param bytes its exact bytes; not copied, so not to be changed
 * @param trace what it can be found by
 * @param job what it changes in the list of jobs
 */
public record Draft(byte[] bytes, TraceRow trace, Optional<JobChange> job) {}
