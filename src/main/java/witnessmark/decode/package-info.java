/** Bytes from a wire into torque events, scans or malformed; pure and bounded whatever arrives. */
package witnessmark.decode;
