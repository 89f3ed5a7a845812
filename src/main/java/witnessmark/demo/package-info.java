/** One whole job with nothing but this program: embedded broker, bridge, simulator, and people. */
package witnessmark.demo;
