/** A unit's run and the shop around it: state, and how an entry changes it. Pure. */
package witnessmark.job;
