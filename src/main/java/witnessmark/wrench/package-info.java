/** The tool: its range, and the calibration in force at a moment. */
package witnessmark.wrench;
