/** The simulator's own record of what was really done, whatever any bridge makes of it. */
package wrenchsim.truth;
