/**
 * A wrench simulator: believable torque readings over MQTT and serial lines, with a record of what
 * was truly done. It knows a bridge only by the documents docs/messages.md and
 * docs/simulator-line.md.
 */
package wrenchsim;
