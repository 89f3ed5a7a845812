package witnessmark.config;

/**
 * Where health and figures are served over HTTP.
 *
 * @param host an address as numbers, without brackets
 * @param port 1 to 65535
 */
public record HttpConfig(String host, int port) {}
