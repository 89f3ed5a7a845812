/**
 * What goes over the wires, byte for byte, written from docs/messages.md and docs/simulator-line.md
 * alone.
 */
package wrenchsim.wire;
