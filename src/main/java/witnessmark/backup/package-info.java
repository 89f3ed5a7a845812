/** A copy of the log that can take its place, and such a copy put in its place. */
package witnessmark.backup;
