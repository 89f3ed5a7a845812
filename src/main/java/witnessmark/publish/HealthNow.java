package witnessmark.publish;

import java.util.Optional;

/**
 * How the bridge is at a moment.
 *
 * @param key changes when people should hear of it at once: the state and its reason
 * @param standstill why nothing can be recorded; empty while recording works
 * @param message the whole message
 */
public record HealthNow(String key, Optional<String> standstill, byte[] message) {}
