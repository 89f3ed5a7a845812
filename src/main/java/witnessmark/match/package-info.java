/** Which fastener a torque event belongs to, and on what evidence. Pure. */
package witnessmark.match;
