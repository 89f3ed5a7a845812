package witnessmark.job;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How a fastener stands, as far as the record shows.
 *
 * @param done how many of its passes are done, from the first
 * @param flaw why it is nonconforming, while no disposition closed that
 * @param rework whether it is to be loosened or replaced and then tightened anew
 * @param scrapped whether it was given up
 * @param turned degrees turned by pulls of the pass under way that ended below its band
 * @param reached newton metres that those pulls reached at most; 0 where it is not known
 * @param pull what its pulls have left it with, since it was loose
 * @param tries how many pulls of the pass under way failed since it was begun or disposed
 * @param pulled whether it was tightened, well or badly, since it was last loose
 * @param last the newest entry about it
 */
public record Condition(
    int done,
    Optional<Flaw> flaw,
    boolean rework,
    boolean scrapped,
    BigDecimal turned,
    BigDecimal reached,
    Optional<Pull> pull,
    int tries,
    boolean pulled,
    OptionalLong last) {
  private static final BigDecimal NONE = BigDecimal.ZERO;

  /** Loose and untouched. */
  public static final Condition LOOSE =
      new Condition(
          0,
          Optional.empty(),
          false,
          false,
          NONE,
          NONE,
          Optional.empty(),
          0,
          false,
          OptionalLong.empty());

  /** Whether a disposition is awaited. */
  public boolean nonconforming() {
    return flaw.isPresent();
  }

  /** The entry that made it nonconforming, while no disposition closed that. */
  public OptionalLong nonconformity() {
    return flaw.isPresent() ? OptionalLong.of(flaw.get().entry()) : OptionalLong.empty();
  }

  /** The pass that entry was judged against. */
  public int nonconformingPass() {
    return flaw.map(Flaw::pass).orElse(0);
  }

  /** Whether the pass stands: done, and nothing open about the fastener. */
  public boolean stands(int pass) {
    return done > pass && !nonconforming();
  }

  /** Whether it has been tightened at all, well or badly. */
  public boolean touched() {
    return done > 0 || nonconforming() || pulled;
  }

  /** How many pulls of that pass have failed. */
  public int tries(int pass) {
    return done == pass ? tries : 0;
  }

  Condition at(long entry) {
    return new Condition(
        done, flaw, rework, scrapped, turned, reached, pull, tries, pulled, OptionalLong.of(entry));
  }

  Condition credited(int pass) {
    return new Condition(pass + 1, flaw, false, scrapped, NONE, NONE, pull, 0, pulled, last);
  }

  Condition atMost(int passes) {
    return done > passes
        ? new Condition(passes, flaw, rework, scrapped, NONE, NONE, pull, 0, pulled, last)
        : this;
  }

  Condition turned(BigDecimal degrees, BigDecimal at) {
    return new Condition(done, flaw, rework, scrapped, degrees, at, pull, tries, pulled, last);
  }

  Condition tried() {
    return new Condition(
        done, flaw, rework, scrapped, turned, reached, pull, tries + 1, pulled, last);
  }

  Condition pulled(boolean tight) {
    return new Condition(done, flaw, rework, scrapped, turned, reached, pull, tries, tight, last);
  }

  Condition pulled(Optional<Pull> newest) {
    return new Condition(
        done, flaw, rework, scrapped, turned, reached, newest, tries, pulled, last);
  }

  Condition loosened() {
    return atMost(0).turned(NONE, NONE).pulled(Optional.empty()).pulled(false).undone(0);
  }

  /** One that is loose already stays so until somebody has decided. */
  Condition failed(Flaw found) {
    Flaw worst = flaw.filter(Flaw::loose).isPresent() ? found.loosened() : found;
    return new Condition(
        done, Optional.of(worst), rework, scrapped, NONE, NONE, pull, 0, pulled, last);
  }

  /** What is conceded is how it stood; once that is gone, it cannot be. */
  Condition undone(int pass) {
    return new Condition(
        done,
        flaw.map(f -> f.pass() >= pass ? f.loosened() : f),
        rework,
        scrapped,
        turned,
        reached,
        pull,
        tries,
        pulled,
        last);
  }

  /** It is held as it was until it is seen to be undone, or turns as a fresh one does. */
  Condition toRework() {
    return new Condition(0, Optional.empty(), true, scrapped, NONE, NONE, pull, 0, false, last);
  }

  Condition conceded() {
    return new Condition(
        Math.max(done, nonconformingPass() + 1),
        Optional.empty(),
        false,
        scrapped,
        NONE,
        NONE,
        pull,
        0,
        pulled,
        last);
  }

  Condition scrap() {
    return new Condition(done, flaw, rework, true, turned, reached, pull, tries, pulled, last);
  }
}
