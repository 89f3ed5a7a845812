package witnessmark.desk;

import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import witnessmark.entry.Disposition;
import witnessmark.entry.Role;
import witnessmark.job.Authority;
import witnessmark.job.Choices;
import witnessmark.job.Flaw;
import witnessmark.job.JobState;
import witnessmark.job.Operator;
import witnessmark.job.Shop;
import witnessmark.procedure.Criticality;

/** Who may decide something on a nonconforming fastener, and in which role. */
final class Decider {
  private static final int NAMED = 3;

  private final Shop shop;
  private final JobState job;
  private final int fastener;
  private final Disposition disposition;
  private final Flaw flaw;
  private final Role least;

  Decider(Shop shop, JobState job, int fastener, Disposition disposition) {
    this.shop = shop;
    this.job = job;
    this.fastener = fastener;
    this.disposition = disposition;
    this.flaw = job.condition(fastener).flaw().orElseThrow();
    this.least = Choices.least(job, fastener, disposition);
  }

  /**
   * The least role in which the person may decide it.
   *
   * @param badge of an enrolled person
   * @throws Declined when there is none, saying who has one
   */
  Role role(String badge) {
    Operator operator = shop.operators().get(badge);
    return role(operator).orElseThrow(() -> new Declined(why(operator) + " " + whoMay()));
  }

  private Optional<Role> role(Operator operator) {
    return operator.roles().stream()
        .filter(r -> r.covers(least))
        .filter(r -> r != Role.SECOND || least != Role.SECOND || !isHand(operator))
        .findFirst();
  }

  private boolean isHand(Operator operator) {
    return flaw.hand().equals(Optional.of(operator.badge()));
  }

  private String why(Operator operator) {
    String name = job.plan().name(fastener);
    Criticality criticality = job.plan().stepOf(fastener).criticality();
    if (operator.roles().contains(Role.SECOND)
        && Authority.least(criticality, disposition) == Role.SECOND) {
      return isHand(operator)
          ? operator.badge()
              + " made the reading of entry "
              + flaw.entry()
              + " and cannot be the second person for "
              + name
              + "."
          : "The reading of entry "
              + flaw.entry()
              + " names nobody, so that "
              + operator.badge()
              + " cannot be shown to be a second person.";
    }
    return operator.badge()
        + " ("
        + operator.roles().stream().map(Role::code).collect(Collectors.joining(", "))
        + ") may not decide "
        + disposition.code()
        + " on "
        + name
        + ", of criticality "
        + criticality.code()
        + ".";
  }

  private String whoMay() {
    String who = least == Role.SECOND ? "a second person or quality" : "quality";
    return ask(who, shop, o -> role(o).isPresent());
  }

  /** Whom to ask: some of those enrolled who may, by their badges. */
  static String ask(String who, Shop shop, Predicate<Operator> may) {
    List<String> badges =
        shop.operators().values().stream().filter(may).map(Operator::badge).limit(NAMED).toList();
    return badges.isEmpty()
        ? "Ask " + who + "; nobody is enrolled as that: operator enrol BADGE --role quality."
        : "Ask " + who + ": " + String.join(", ", badges) + ".";
  }
}
