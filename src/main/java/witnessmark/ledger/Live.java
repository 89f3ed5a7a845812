package witnessmark.ledger;

import java.util.List;
import java.util.Map;

/**
 * The entries that the state of the shop follows from: those about the shop, and those of
 * unfinished jobs.
 *
 * @param size how many entries the whole log had then
 * @param entries by number
 * @param readings how many torque events of each calibrated wrench stand after its newest
 *     calibration's entry
 */
public record Live(long size, List<Stored> entries, Map<String, Long> readings) {}
