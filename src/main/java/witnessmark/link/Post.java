package witnessmark.link;

/**
 * A message to be published, not to be kept by the broker for later subscribers.
 *
 * @param topic where
 * @param payload what; not copied, so not to be changed
 */
public record Post(String topic, byte[] payload) {}
