package witnessmark.desk;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.job.Operator;
import witnessmark.job.Shop;
import witnessmark.torque.Label;

/**
 * Makes a badge known, or changes its name or roles.
 *
 * @param badge what a scanner reads from it
 * @param name as shown on records; without one that on record stays, and a new badge is its name
 * @param roles without any those on record stay, and a new badge is a technician's
 */
public record EnrolOperator(
    String badge, Optional<String> name, List<Role> roles, Optional<String> by) implements Command {
  public EnrolOperator {
    Label.check("badge", badge);
    ScannerCommands.notOne("badge", badge);
    name.ifPresent(n -> Label.check("name", n));
    roles = List.copyOf(roles);
  }

  /** A badge with a name, in the role on record or as a technician. */
  public EnrolOperator(String badge, String name, Optional<String> by) {
    this(badge, Optional.of(name), List.of(), by);
  }

  @Override
  public List<Entry> decide(Shop shop, Instant at) {
    Ask.operator(shop, by);
    Optional<Operator> known = Optional.ofNullable(shop.operators().get(badge));
    List<Role> given = roles.isEmpty() ? known.map(Operator::roles).orElse(List.of()) : roles;
    Operator operator =
        new Operator(badge, name.or(() -> known.map(Operator::name)).orElse(badge), given);
    return List.of(new Entry.OperatorEnrolled(at, badge, operator.name(), operator.roles(), by));
  }
}
