/** The physics of one bolted joint under a wrench; no wires, no clock, seeded chance only. */
package wrenchsim.joint;
