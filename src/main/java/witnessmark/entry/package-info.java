/**
 * What the log can say: one record for each kind of entry, the words they use, and their JSON.
 *
 * <p>An entry states what was decided, so that folding old entries never decides again.
 */
package witnessmark.entry;
