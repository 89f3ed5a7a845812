/** Reads and checks the whole configuration into records before a port is opened. */
package witnessmark.config;
