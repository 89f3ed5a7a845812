/** The broker side of the wrenches; the only user of the MQTT client library. */
package wrenchsim.mqtt;
