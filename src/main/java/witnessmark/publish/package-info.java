/**
 * Follows committed entries by number and tells the outside. Can stop, restart, or be added later.
 */
package witnessmark.publish;
