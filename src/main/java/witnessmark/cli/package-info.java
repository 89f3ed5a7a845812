/** Commands, exit statuses and people's text. No decisions. */
package witnessmark.cli;
