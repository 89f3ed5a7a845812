/** The wires in and out: what a message is as it came off one, and how a link stands. */
package witnessmark.link;
