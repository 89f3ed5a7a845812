/** How the command line's answers read, for people and for programs. */
package witnessmark.cli.answer;
