/** The link to an MQTT broker; the only user of the MQTT client library. */
package witnessmark.link.mqtt;
