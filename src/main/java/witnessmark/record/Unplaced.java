package witnessmark.record;

import java.util.Optional;

/**
 * A reading that counts for no fastener.
 *
 * @param attempt the reading
 * @param setAside the entry by which a person set it aside
 * @param asks whether a person still has to say which fastener it was on
 */
public record Unplaced(Attempt attempt, Optional<Numbered> setAside, boolean asks) {}
