/** Numbers about numbers: spread, control charts, run rules, capability, drift. Pure. */
package witnessmark.stats;
