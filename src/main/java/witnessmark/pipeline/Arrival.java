package witnessmark.pipeline;

import java.time.Instant;
import java.util.Optional;
import witnessmark.decode.Decoded;

/**
 * One decoded thing that a device sent.
 *
 * @param station where it came from; empty where the channel names none
 * @param source the link and channel, for the record
 * @param at when the bridge took it
 * @param redelivered whether the transport says that it may have been delivered before
 * @param stored whether it came with others in one message, as a wrench delivers what it had stored
 * @param decoded what it says
 */
public record Arrival(
    Optional<String> station,
    String source,
    Instant at,
    boolean redelivered,
    boolean stored,
    Decoded decoded) {}
