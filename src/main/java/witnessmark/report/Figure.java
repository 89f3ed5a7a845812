package witnessmark.report;

/**
 * A figure with its name.
 *
 * @param text the number with unit, and how it comes about
 */
public record Figure(String name, String text) {}
