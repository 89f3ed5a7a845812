package witnessmark.ledger;

/**
 * What the log can be searched by; follows from an entry. A text that the entry has not is null.
 *
 * @param kind the entry's kind
 * @param at when it was taken, RFC 3339 UTC
 * @param scope {@code shop}, {@code job} or {@code none}
 * @param number the wrench's event number
 */
public record TraceRow(
    String kind,
    String at,
    String scope,
    String job,
    String station,
    String fastener,
    String wrench,
    Long number,
    String operator,
    String verdict,
    String effect,
    String fingerprint) {}
