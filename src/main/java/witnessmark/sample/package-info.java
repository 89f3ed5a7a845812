/** Which readings on record are values of a process: asked for, counted, left out. Pure. */
package witnessmark.sample;
