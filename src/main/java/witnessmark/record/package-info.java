/** What is on record of a unit: what was asked, measured and decided, and what is missing. */
package witnessmark.record;
