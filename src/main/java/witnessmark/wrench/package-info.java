/** The tool: its range, the calibration in force at a moment, and what it is fit for. */
package witnessmark.wrench;
