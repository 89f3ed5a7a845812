/**
 * The placed event against its band, its angle window and its wrench: a verdict with reasons. Pure.
 */
package witnessmark.judge;
