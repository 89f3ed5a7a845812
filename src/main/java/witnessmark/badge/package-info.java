/** A person's key pair: its private half sealed in a file by a passphrase, its public half. */
package witnessmark.badge;
