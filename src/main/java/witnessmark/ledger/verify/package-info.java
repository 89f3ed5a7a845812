/**
 * An independent check of a ledger: recomputes every hash, signature and derived row from the raw
 * entry bytes, after the published ledger format and nothing else.
 *
 * <p>Imports the JDK and Jackson's streaming parser only. It shares no code with the writer on
 * purpose: a shared misreading would verify.
 */
package witnessmark.ledger.verify;
