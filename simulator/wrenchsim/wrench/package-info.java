/** A digital torque wrench: what it shows, when it thinks it is, and what number it gives. */
package wrenchsim.wrench;
