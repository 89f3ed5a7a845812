package witnessmark.procedure;

import java.util.Optional;

/**
 * What the procedure tells about a joint.
 *
 * @param thread e.g. {@code M8x1.25} or {@code 5/16-18}
 * @param propertyClass e.g. {@code 8.8}, {@code grade 5}
 * @param surface surface condition, e.g. {@code zinc, oiled}
 */
public record Joint(
    Optional<String> thread, Optional<String> propertyClass, Optional<String> surface) {}
