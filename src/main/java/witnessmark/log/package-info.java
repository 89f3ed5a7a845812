/**
 * How the program writes its own log: for a terminal, for the journal, or as JSON. The edge at
 * which text from wires is made harmless; the only user of the logging library's insides.
 */
package witnessmark.log;
