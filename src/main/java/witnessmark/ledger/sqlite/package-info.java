/** The log in an SQLite file. The only user of {@code java.sql}. */
package witnessmark.ledger.sqlite;
