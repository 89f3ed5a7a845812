/** The link to a wrench on a serial port; the only user of the serial library. */
package witnessmark.link.serial;
