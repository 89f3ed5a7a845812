package witnessmark.job;

/**
 * A person known by a badge.
 *
 * @param badge what the scanner reads
 * @param name as shown on records
 */
public record Operator(String badge, String name) {}
