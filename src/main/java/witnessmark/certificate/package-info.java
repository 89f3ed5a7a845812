/**
 * The certificate of a unit: a PDF that the customer can check, and that is a pure function of the
 * entries it shows and of the checkpoint that proves them.
 */
package witnessmark.certificate;
