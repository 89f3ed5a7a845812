/**
 * Faults brought on a real daemon with a real broker, real files and real pseudo-terminals, and
 * what became of every message.
 */
package witnessmark.trial.faults;
