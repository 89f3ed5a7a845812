package witnessmark.record;

import java.util.Optional;
import witnessmark.job.Operator;

/**
 * A badge that a record names.
 *
 * @param enrolled who it is; empty where nobody enrolled that badge
 */
public record Person(String badge, Optional<Operator> enrolled) {}
