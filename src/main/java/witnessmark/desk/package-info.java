/**
 * What people command: each command decides, from the shop as it stands, what goes on record. Pure.
 */
package witnessmark.desk;
