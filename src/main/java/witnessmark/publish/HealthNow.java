package witnessmark.publish;

/**
 * How the bridge is at a moment.
 *
 * @param key changes when people should hear of it at once: the state and its reason
 * @param message the whole message
 */
public record HealthNow(String key, byte[] message) {}
