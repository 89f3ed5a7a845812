/**
 * Looks a bridge and its surroundings over and says what is wrong and what to do next. Changes
 * nothing and may be run while the bridge is at work.
 */
package witnessmark.doctor;
