/** The nouns of measurement: torque, angle, bands and verdicts, in exact decimals. */
package witnessmark.torque;
