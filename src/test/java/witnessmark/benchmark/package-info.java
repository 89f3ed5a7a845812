/**
 * How fast the bridge is, beside the least that could do the same job, measured in one run. Not
 * part of the tests: docs/benchmark.md says how to run it and how to read it.
 */
package witnessmark.benchmark;
