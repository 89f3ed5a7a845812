/** The list of nonconformities: what is open, since when, and what was decided on the rest. */
package witnessmark.nonconformity;
