package witnessmark.report;

/**
 * What a job is about.
 *
 * @param unit the number of the unit that it assembles
 * @param procedure by what
 * @param revision of the procedure
 */
public record Assembly(String unit, String procedure, String revision) {}
