package witnessmark.desk;

import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.job.Operator;
import witnessmark.job.OperatorKey;
import witnessmark.job.Shop;

/**
 * Whose key an entry must be signed with. A badge that holds a key decides with it; and since a
 * quality badge holds one, what would undermine that is decided with a key or not at all.
 */
public final class Warrant {
  /** What is decided, as far as it matters for who must prove to be who. */
  private enum Weight {
    /** Who belongs to the shop, in which roles, with which key. */
    PEOPLE,
    /** What readings are judged by; and what needs more than a technician. */
    HEAVY,
    /** What a technician may do, whose badge may have no key. */
    LIGHT
  }

  /** A decision and the badge that answers for it. */
  private record Claim(Weight weight, Optional<String> by) {}

  private Warrant() {}

  /**
   * The key with which the entry must be signed; empty where none is needed.
   *
   * @param entry the next one of that shop
   * @throws Declined when nobody may decide so without a key, or with that person's
   */
  public static Optional<OperatorKey> of(Shop shop, Entry entry) {
    Optional<Claim> claim = claim(entry);
    if (claim.isEmpty()) {
      return Optional.empty();
    }
    Optional<Operator> person = claim.get().by().map(shop.operators()::get);
    Optional<OperatorKey> held = person.flatMap(Operator::key);
    boolean keyed = keyed(shop);
    if (claim.get().weight() == Weight.PEOPLE) {
      people(shop, entry, person, keyed);
    } else if (keyed && held.isEmpty() && claim.get().weight() == Weight.HEAVY) {
      throw new Declined(
          "Quality decides with keys here, and so must who decides this"
              + person.map(p -> "; " + p.badge() + " holds none").orElse("")
              + ". "
              + ask(shop));
    }
    return held.isPresent() ? held : first(shop, entry);
  }

  /** The sentence for a badge whose key is not at hand. */
  public static Declined keyless(Shop shop, OperatorKey key, String badge) {
    if (key.entry() == shop.size()) {
      return new Declined(
          "The first key of "
              + badge
              + " signs its own entry: name its file, too (--sign-with FILE).");
    }
    return new Declined(
        badge
            + " decides with the key of entry "
            + key.entry()
            + " only: name its file (--sign-with FILE).");
  }

  /** The sentence for a key that is another than that in force. */
  public static Declined otherKey(OperatorKey key, String badge) {
    return new Declined(
        "That file's key is not the one of entry "
            + key.entry()
            + ", with which "
            + badge
            + " decides: name the right file (--sign-with FILE).");
  }

  /** The badge that answers for the entry. */
  public static String badge(Entry entry) {
    return claim(entry).flatMap(Claim::by).orElseThrow();
  }

  private static boolean keyed(Shop shop) {
    return shop.operators().values().stream().anyMatch(Operator::qualityByKey);
  }

  private static void people(Shop shop, Entry entry, Optional<Operator> person, boolean keyed) {
    String concerned = concerned(entry);
    boolean ownLoss = entry instanceof Entry.OperatorKeyWithdrawn w && w.by().equals(w.operator());
    if (keyed && !ownLoss && person.filter(Operator::qualityByKey).isEmpty()) {
      throw new Declined(
          "Quality decides with keys here, and only so who belongs to the shop. " + ask(shop));
    }
    boolean held =
        Optional.ofNullable(shop.operators().get(concerned)).flatMap(Operator::key).isPresent();
    boolean self = person.filter(p -> p.badge().equals(concerned)).isPresent();
    if (!keyed && !self && (held || entry instanceof Entry.OperatorKeyEnrolled)) {
      throw new Declined(
          "While no quality badge holds a key, only "
              + concerned
              + " may do that: give --by "
              + concerned
              + " and its key (--sign-with FILE).");
    }
    if (keyed && held && self && entry instanceof Entry.OperatorKeyEnrolled) {
      throw new Declined(
          concerned
              + " holds a key of quality: ask another badge of quality to replace it with its own"
              + " key, so that one that is known to work is left.");
    }
    if (keyed && !keyed(shop.after(shop.size(), entry))) {
      throw new Declined(
          concerned
              + " holds the only key of quality, without which nobody could be enrolled any more:"
              + " enrol another first.");
    }
  }

  /** A badge's first key, enrolled by itself, signs its own entry: it is shown to be there. */
  private static Optional<OperatorKey> first(Shop shop, Entry entry) {
    return entry instanceof Entry.OperatorKeyEnrolled e
        ? Optional.of(new OperatorKey(shop.size(), e.publicKey()))
        : Optional.empty();
  }

  private static String concerned(Entry entry) {
    if (entry instanceof Entry.OperatorEnrolled e) {
      return e.operator();
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      return e.operator();
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      return e.operator();
    }
    throw new IllegalStateException(entry.getClass() + " is about nobody");
  }

  private static Optional<Claim> claim(Entry entry) {
    if (entry instanceof Entry.OperatorEnrolled e) {
      return claim(Weight.PEOPLE, e.by());
    } else if (entry instanceof Entry.OperatorKeyEnrolled e) {
      return claim(Weight.PEOPLE, Optional.of(e.by()));
    } else if (entry instanceof Entry.OperatorKeyWithdrawn e) {
      return claim(Weight.PEOPLE, Optional.of(e.by()));
    } else if (entry instanceof Entry.WrenchEnrolled e) {
      return claim(Weight.HEAVY, e.by());
    } else if (entry instanceof Entry.WrenchBound e) {
      return claim(Weight.HEAVY, Optional.of(e.by()));
    } else if (entry instanceof Entry.CalibrationRuled e) {
      return claim(Weight.HEAVY, e.by());
    } else if (entry instanceof Entry.WrenchCalibrated e) {
      return claim(Weight.HEAVY, e.by());
    } else if (entry instanceof Entry.ProcedureReleased e) {
      return claim(Weight.HEAVY, e.by());
    } else if (entry instanceof Entry.CalibrationEnded e) {
      return ended(e);
    } else if (entry instanceof Entry.Disposed e) {
      boolean light = e.role().equals(Optional.of(Role.TECHNICIAN));
      return claim(light ? Weight.LIGHT : Weight.HEAVY, Optional.of(e.by()));
    } else if (entry instanceof Entry.SetAside e) {
      return e.role().flatMap(r -> claim(Weight.HEAVY, Optional.of(e.by())));
    }
    return Optional.empty();
  }

  /** Only what ends a calibration by a decision; a failed check and a used-up count end it too. */
  private static Optional<Claim> ended(Entry.CalibrationEnded e) {
    return switch (e.cause()) {
      case LEFT_OUT_OF_TOLERANCE -> claim(Weight.HEAVY, e.by());
      case TAKEN_OUT_OF_USE -> claim(Weight.LIGHT, e.by());
      case OPERATIONS_USED_UP, CHECK_FAILED -> Optional.empty();
    };
  }

  private static Optional<Claim> claim(Weight weight, Optional<String> by) {
    return Optional.of(new Claim(weight, by));
  }

  private static String ask(Shop shop) {
    return Decider.ask("quality", shop, Operator::qualityByKey);
  }
}
