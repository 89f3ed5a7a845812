/** Real programs and wires on the bench of a test: brokers, serial cables, free ports. */
package witnessmark.bench;
