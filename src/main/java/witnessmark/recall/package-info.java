/** Which joints a wrench that was found wrong may have left out of their bands. */
package witnessmark.recall;
