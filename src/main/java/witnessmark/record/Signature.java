package witnessmark.record;

import java.util.Objects;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.badge.PublicHalf;
import witnessmark.entry.Entry;
import witnessmark.entry.Role;
import witnessmark.entry.Signed;
import witnessmark.job.Operator;
import witnessmark.job.OperatorKey;
import witnessmark.job.Shop;

/**
 * What stands behind a decision, checked with the keys that are on record.
 *
 * @param kind how it came out
 * @param key the entry that enrolled the key: the one it is signed with by its own word, or the one
 *     that it lacks; empty where there is none
 */
public record Signature(Kind kind, OptionalLong key) {
  /** How it came out. */
  public enum Kind {
    /** The badge is believed: nobody had to sign. */
    NONE("none"),
    /** Signed with the badge's key. */
    FITS("fits"),
    /** Signed, but not with the key that the badge held then. */
    MISFIT("does-not-fit"),
    /** Not signed, though a key had to. */
    LACKING("lacking"),
    /** Signed with a key whose entry is not at hand. */
    UNSHOWN("not-shown");

    private final String code;

    Kind(String code) {
      this.code = code;
    }

    public String code() {
      return code;
    }
  }

  /** Of entries without their bytes nothing is known. */
  static final Signature NONE = new Signature(Kind.NONE, OptionalLong.empty());

  public Signature {
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(key, "key");
  }

  /**
   * Checks a disposition.
   *
   * @param shop before it, as far as its people are at hand
   * @param origin the log's own name
   * @param keyKnown whether the entry of that number is at hand
   */
  static Signature of(
      Shop shop,
      String origin,
      long n,
      Entry.Disposed disposed,
      byte[] bytes,
      java.util.function.LongPredicate keyKnown) {
    Optional<OperatorKey> held =
        Optional.ofNullable(shop.operators().get(disposed.by())).flatMap(Operator::key);
    OptionalLong named = Signed.key(bytes);
    if (named.isEmpty()) {
      boolean must =
          held.isPresent()
              || !disposed.role().equals(Optional.of(Role.TECHNICIAN))
                  && shop.operators().values().stream().anyMatch(Operator::qualityByKey);
      OptionalLong lacks = held.map(k -> OptionalLong.of(k.entry())).orElse(OptionalLong.empty());
      return must ? new Signature(Kind.LACKING, lacks) : NONE;
    }
    if (named.getAsLong() < n && !keyKnown.test(named.getAsLong())) {
      return new Signature(Kind.UNSHOWN, named);
    }
    boolean fits =
        held.filter(k -> k.entry() == named.getAsLong())
            .filter(k -> signed(k.publicKey(), origin, n, bytes))
            .isPresent();
    return new Signature(fits ? Kind.FITS : Kind.MISFIT, named);
  }

  private static boolean signed(String publicKey, String origin, long n, byte[] bytes) {
    try {
      return new PublicHalf(publicKey)
          .signed(
              Signed.text(origin, n, Signed.unsigned(bytes)),
              Signed.signature(bytes).orElseThrow());
    } catch (IllegalArgumentException e) {
      // what is no key has signed nothing
      return false;
    }
  }
}
