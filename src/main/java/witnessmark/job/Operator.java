package witnessmark.job;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import witnessmark.entry.Role;

/**
 * A person known by a badge.
 *
 * @param badge what the scanner reads
 * @param name as shown on records
 * @param roles at least one, the least first; whoever was enrolled before there were roles is a
 *     technician
 * @param key with which the badge decides; empty where it holds none
 */
public record Operator(String badge, String name, List<Role> roles, Optional<OperatorKey> key) {
  public Operator {
    Objects.requireNonNull(key, "key");
    roles =
        roles.isEmpty() ? List.of(Role.TECHNICIAN) : roles.stream().sorted().distinct().toList();
  }

  /** A person without a key. */
  public Operator(String badge, String name, List<Role> roles) {
    this(badge, name, roles, Optional.empty());
  }

  /** The same person with that key, or without. */
  public Operator holding(Optional<OperatorKey> held) {
    return new Operator(badge, name, roles, held);
  }

  /** Whether the person answers for what leaves the shop, and can prove to be that person. */
  public boolean qualityByKey() {
    return key.isPresent() && roles.contains(Role.QUALITY);
  }
}
