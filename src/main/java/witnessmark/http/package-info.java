/**
 * Health and figures over HTTP, for whoever watches the bridge; loaded only where the configuration
 * asks for it. The only user of the metrics library and of the JDK's HTTP server.
 */
package witnessmark.http;
