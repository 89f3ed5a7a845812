/** Reads TOML files into typed values, collecting every fault with its line and column. */
package witnessmark.toml;
