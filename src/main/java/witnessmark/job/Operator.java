package witnessmark.job;

import java.util.List;
import witnessmark.entry.Role;

/**
 * A person known by a badge.
 *
 * @param badge what the scanner reads
 * @param name as shown on records
 * @param roles at least one, the least first; whoever was enrolled before there were roles is a
 *     technician
 */
public record Operator(String badge, String name, List<Role> roles) {
  public Operator {
    roles =
        roles.isEmpty() ? List.of(Role.TECHNICIAN) : roles.stream().sorted().distinct().toList();
  }
}
