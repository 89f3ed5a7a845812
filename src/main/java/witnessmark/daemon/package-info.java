/**
 * The composition root: builds the daemon out of its parts, starts, watches, drains and stops it.
 */
package witnessmark.daemon;
