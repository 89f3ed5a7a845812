/** Speaks to the service manager that started the program, where one did. */
package witnessmark.systemd;
