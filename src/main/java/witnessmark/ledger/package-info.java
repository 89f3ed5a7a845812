/**
 * The append-only log: exact bytes, the tree over them, signed checkpoints, the store as an
 * interface.
 */
package witnessmark.ledger;
