package witnessmark.ledger;

import java.util.List;

/**
 * The entries that the state of the shop follows from: those about the shop, and those of
 * unfinished jobs.
 *
 * @param size how many entries the whole log had then
 * @param entries by number
 */
public record Live(long size, List<Stored> entries) {}
