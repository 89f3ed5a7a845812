/**
 * What a scanned code means where it was scanned, and which of people's commands it is. Adds no
 * rule of its own to theirs. Pure.
 */
package witnessmark.scan;
