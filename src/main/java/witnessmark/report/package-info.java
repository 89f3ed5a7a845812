/** Committed entries as what people and other programs read: tables, CSV, JSON Lines. */
package witnessmark.report;
