/** Which mistakes at a bench the readings will show, told before the work; pure. */
package witnessmark.sight;
