/**
 * The serial side of the wrenches: a real port or a pseudo-terminal; the only user of jSerialComm.
 */
package wrenchsim.line;
