/** The daemon under the simulator for a long time: what must not grow, and what must not slow. */
package witnessmark.soak;
