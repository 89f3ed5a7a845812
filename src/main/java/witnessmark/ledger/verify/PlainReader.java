package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;

/**
 * Reads, some times faster than a parser of all JSON, the entries of the plainest form: ASCII
 * without white space, short names, integers of at most 18 digits, and escapes only in texts that
 * nothing follows from. All other entries it leaves to {@link EntryReader}; it never takes what
 * that would refuse, and reads the same fields.
 */
final class PlainReader {
  private static final int DEEPEST = 16;
  private static final int DIGITS = 18;
  private static final int BITS = 7;

  /** A name that something follows from. */
  private record Name(String text, long first, long second, Field ofEntry, Field ofEvent) {
    static Name of(String name) {
      PlainText quoted = new PlainText();
      quoted.begin(('"' + name + '"').getBytes(StandardCharsets.US_ASCII));
      if (!quoted.name()) {
        throw new IllegalArgumentException(name);
      }
      return new Name(name, quoted.first, quoted.second, Field.ofEntry(name), Field.ofEvent(name));
    }
  }

  private static final Name[] NAMES = new Name[1 << BITS];

  static {
    for (String text : EntryFields.NAMES) {
      Name name = Name.of(text);
      int slot = NameSet.slot(name.first, name.second, BITS);
      while (NAMES[slot] != null) {
        slot = (slot + 1) % NAMES.length;
      }
      NAMES[slot] = name;
    }
  }

  private enum Owner {
    ENTRY,
    EVENT,
    OTHER
  }

  private final PlainText in = new PlainText();
  private final NameSet names = new NameSet();
  private EntryFields fields;
  private int objects;
  private boolean versionOne;

  /** Fills {@code into} when the bytes are an entry of the plain form; false when they are not. */
  boolean read(byte[] entry, EntryFields into) {
    in.begin(entry);
    names.clear();
    into.clear(entry);
    fields = into;
    objects = 0;
    versionOne = false;
    return object(Owner.ENTRY, 0)
        && in.ended()
        && versionOne
        && into.has(Field.KIND)
        && !into.text(Field.KIND).isEmpty();
  }

  private boolean object(Owner owner, int depth) {
    if (depth > DEEPEST || !in.next('{')) {
      return false;
    }
    int number = objects++;
    if (in.next('}')) {
      return true;
    }
    do {
      if (!in.name() || !names.add(number, in.first, in.second) || !in.next(':')) {
        return false;
      }
      Name name = owner == Owner.OTHER ? null : known();
      if (name == null ? !value(depth) : !field(owner, name, depth)) {
        return false;
      }
    } while (in.next(','));
    return in.next('}');
  }

  /** The name just read where something follows from it, else null. */
  private Name known() {
    int slot = NameSet.slot(in.first, in.second, BITS);
    Name name = NAMES[slot];
    while (name != null && (name.first != in.first || name.second != in.second)) {
      slot = (slot + 1) % NAMES.length;
      name = NAMES[slot];
    }
    return name;
  }

  private boolean field(Owner owner, Name name, int depth) {
    boolean entry = owner == Owner.ENTRY;
    int begin = in.peek();
    Field field = entry ? name.ofEntry : name.ofEvent;
    if (begin == '"' && field != null) {
      return text(field);
    } else if (begin == '{' && entry && name.text.equals("event")) {
      return object(Owner.EVENT, depth + 1);
    } else if (entry && name.text.equals("v")) {
      versionOne = in.next('1');
      return versionOne && in.digits() == 0;
    } else if (begin >= '0' && begin <= '9' && !entry && name.text.equals("number")) {
      int from = in.at;
      if (!integer()) {
        return false;
      }
      fields.eventNumber(from, in.at);
      return true;
    }
    return value(depth);
  }

  private boolean text(Field field) {
    if (!in.text() || in.escaped) {
      return false;
    }
    fields.text(field, in.start, in.end);
    return true;
  }

  private boolean value(int depth) {
    return switch (in.peek()) {
      case '"' -> in.text();
      case '{' -> object(Owner.OTHER, depth + 1);
      case '[' -> array(depth + 1);
      case 't' -> in.word("true");
      case 'f' -> in.word("false");
      case 'n' -> in.word("null");
      default -> integer();
    };
  }

  private boolean array(int depth) {
    if (depth > DEEPEST || !in.next('[')) {
      return false;
    }
    if (in.next(']')) {
      return true;
    }
    do {
      if (!value(depth)) {
        return false;
      }
    } while (in.next(','));
    return in.next(']');
  }

  /** An integer without sign. A fraction or exponent behind it fails at the caller's next step. */
  private boolean integer() {
    boolean zero = in.peek() == '0';
    int digits = in.digits();
    return digits == 1 || (digits > 1 && digits <= DIGITS && !zero);
  }
}
