package witnessmark.ledger.verify;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Follows who holds which key, and checks that decisions are signed where they must be: by the key
 * that was in force at that entry for the badge that decides.
 */
final class DecisionCheck {
  private static final String QUALITY = "quality";
  private static final String ENROLLED = "operator-enrolled";
  private static final String KEY_ENROLLED = "operator-key-enrolled";
  private static final String KEY_WITHDRAWN = "operator-key-withdrawn";

  /** Who belongs to the shop, and with which key. */
  private static final Set<String> PEOPLE = Set.of(ENROLLED, KEY_ENROLLED, KEY_WITHDRAWN);

  private static final Set<String> REGISTERS =
      Set.of(
          "wrench-enrolled",
          "wrench-bound",
          "calibration-ruled",
          "wrench-calibrated",
          "procedure-released");

  /** A badge's key, and the entry that enrolled it. */
  private record Key(long entry, String publicKey) {}

  /**
   * What is known of a badge.
   *
   * @param roles none where it was never enrolled
   */
  private record Person(Set<String> roles, Key key) {
    boolean quality() {
      return roles.contains(QUALITY);
    }
  }

  private static final Person NOBODY = new Person(Set.of(), null);

  private final String origin;
  private final Findings findings;
  private final Map<String, Person> people = new HashMap<>();

  /** Whether an entry before named roles: since then, every one does that has to. */
  private boolean roles;

  DecisionCheck(String origin, Findings findings) {
    this.origin = origin;
    this.findings = findings;
  }

  void entry(long n, String kind, byte[] bytes) {
    if (!Members.concerns(kind) && !concerns(kind)) {
      return;
    }
    DecisionFields fields = DecisionFields.of(bytes);
    String fault = Members.concerns(kind) ? Members.fault(kind, fields) : null;
    if (fault == null && kind.equals("disposed")) {
      named(n, role(fields));
    }
    if (fault == null && concerns(kind)) {
      fault = fault(n, kind, fields, bytes);
    }
    if (fault == null && kind.equals(KEY_ENROLLED) && !enrolsKey(fields)) {
      fault = "enrols what is " + PersonSignature.NO_KEY;
    }
    named(n, fault);
    // A bad entry is named once; what follows from it must not look bad with it.
    fold(n, kind, fields);
  }

  /**
   * What is wrong with the role in which a nonconformity was disposed of, as far as that does not
   * take the procedure: its text gives the criticality, by which rework and replacement may take
   * more than a technician.
   */
  private String role(DecisionFields fields) {
    String role = fields.text("role");
    String by = fields.text("by");
    if (role.isEmpty()) {
      return roles ? "says in no role that " + Cells.show(by) + " decided, as it must" : null;
    }
    if (!people.getOrDefault(by, NOBODY).roles.contains(role)) {
      return "decided by "
          + Cells.show(by)
          + " as "
          + role
          + ", which that badge is not enrolled as";
    }
    String disposition = fields.text("disposition");
    boolean released = disposition.equals("use-as-is") || disposition.equals("scrap");
    return released && !role.equals(QUALITY)
        ? disposition + " is decided as " + role + ", which only quality may"
        : null;
  }

  private static boolean enrolsKey(DecisionFields fields) {
    return Ed25519.of(ExactBase64.decode(fields.text("publicKey"))) != null;
  }

  private void named(long n, String fault) {
    if (fault != null) {
      findings.add(Findings.Subject.ENTRY, Place.entry(n), fault);
    }
  }

  /** Whether entries of the kind may have to be signed. */
  static boolean concerns(String kind) {
    return kind.equals("disposed")
        || kind.equals("calibration-ended")
        || kind.equals("set-aside")
        || PEOPLE.contains(kind)
        || REGISTERS.contains(kind);
  }

  private String fault(long n, String kind, DecisionFields fields, byte[] bytes) {
    if (!decided(kind, fields)) {
      return null;
    }
    String by = fields.text("by");
    Person person = people.getOrDefault(by, NOBODY);
    boolean keyed = people.values().stream().anyMatch(DecisionCheck::qualityByKey);
    if (PEOPLE.contains(kind)) {
      String fault = people(kind, fields, person, keyed);
      if (fault != null) {
        return fault;
      }
    } else if (keyed && person.key == null && heavy(kind, fields)) {
      return "not signed by anybody's key, as it must be since a quality badge holds one";
    }
    // A badge's first key, enrolled by itself, signs its own entry.
    Key key =
        person.key == null && kind.equals(KEY_ENROLLED)
            ? new Key(n, fields.text("publicKey"))
            : person.key;
    if (key == null) {
      return fields.signed() ? "signed, though " + Cells.show(by) + " held no key" : null;
    }
    String decides = Cells.show(by) + " decides with the key of entry " + key.entry;
    if (!fields.signed()) {
      return "not signed, though " + decides;
    }
    if (fields.key() != key.entry) {
      return "signed by another key, though " + decides;
    }
    return PersonSignature.fault(origin, n, bytes, fields.text("signature"), key.publicKey);
  }

  private String people(String kind, DecisionFields fields, Person person, boolean keyed) {
    String concerned = fields.text("operator");
    boolean self = fields.text("by").equals(concerned);
    if (keyed) {
      boolean may = qualityByKey(person) || (self && kind.equals(KEY_WITHDRAWN));
      return may ? null : "not decided by quality with a key, as it must be since one is enrolled";
    }
    boolean held = people.getOrDefault(concerned, NOBODY).key != null;
    return !self && (held || kind.equals(KEY_ENROLLED))
        ? "about the key of " + Cells.show(concerned) + ", and not decided by that badge"
        : null;
  }

  private static boolean qualityByKey(Person person) {
    return person.quality() && person.key != null;
  }

  /**
   * Whether somebody decided it; a failed check or a count ends a calibration, too, and to set
   * aside is a decision of weight only where it names the role that it took.
   */
  static boolean decided(String kind, DecisionFields fields) {
    String cause = fields.text("cause");
    if (kind.equals("set-aside")) {
      return !fields.text("role").isEmpty();
    }
    return !kind.equals("calibration-ended")
        || cause.equals("taken-out-of-use")
        || cause.equals("left-out-of-tolerance");
  }

  /** What a badge without a key may not decide once a quality badge holds one. */
  static boolean heavy(String kind, DecisionFields fields) {
    return switch (kind) {
      case "disposed" -> !fields.text("role").equals("technician");
      case "calibration-ended" -> fields.text("cause").equals("left-out-of-tolerance");
      default -> true;
    };
  }

  private void fold(long n, String kind, DecisionFields fields) {
    Person before = people.getOrDefault(fields.text("operator"), NOBODY);
    Person after =
        switch (kind) {
          case ENROLLED -> new Person(fields.roles(), before.key);
          case KEY_ENROLLED -> new Person(before.roles, new Key(n, fields.text("publicKey")));
          case KEY_WITHDRAWN -> new Person(before.roles, null);
          default -> before;
        };
    roles |= kind.equals(ENROLLED) && fields.namesRoles();
    if (PEOPLE.contains(kind)) {
      people.put(fields.text("operator"), after);
    }
  }
}
