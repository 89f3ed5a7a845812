/**
 * One way through: decode, match, judge, append, then acknowledge. The only place that knows this
 * order.
 */
package witnessmark.pipeline;
