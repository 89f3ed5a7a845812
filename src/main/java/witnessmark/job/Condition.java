package witnessmark.job;

import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * How a fastener stands, as far as the record shows.
 *
 * @param done how many of its passes are done, from the first
 * @param nonconformity the entry that made it nonconforming, while no disposition closed that
 * @param nonconformingPass the pass that entry was judged against
 * @param rework whether it is to be loosened or replaced and then tightened anew
 * @param scrapped whether it was given up
 * @param turned degrees turned by pulls of the pass under way that ended below its band
 * @param reached newton metres that those pulls reached at most; 0 where it is not known
 * @param pull what its pulls have left it with, since it was loose
 * @param last the newest entry about it
 */
public record Condition(
    int done,
    OptionalLong nonconformity,
    int nonconformingPass,
    boolean rework,
    boolean scrapped,
    BigDecimal turned,
    BigDecimal reached,
    Optional<Pull> pull,
    OptionalLong last) {
  /** Loose and untouched. */
  public static final Condition LOOSE =
      new Condition(
          0,
          OptionalLong.empty(),
          0,
          false,
          false,
          BigDecimal.ZERO,
          BigDecimal.ZERO,
          Optional.empty(),
          OptionalLong.empty());

  /** Whether a disposition is awaited. */
  public boolean nonconforming() {
    return nonconformity.isPresent();
  }

  /** Whether the pass stands: done, and nothing open about the fastener. */
  public boolean stands(int pass) {
    return done > pass && !nonconforming();
  }

  /** Whether it has been tightened at all, well or badly. */
  public boolean touched() {
    return done > 0 || nonconforming();
  }

  Condition at(long entry) {
    return new Condition(
        done,
        nonconformity,
        nonconformingPass,
        rework,
        scrapped,
        turned,
        reached,
        pull,
        OptionalLong.of(entry));
  }

  Condition credited(int pass) {
    return new Condition(
        pass + 1,
        nonconformity,
        nonconformingPass,
        false,
        scrapped,
        BigDecimal.ZERO,
        BigDecimal.ZERO,
        pull,
        last);
  }

  Condition atMost(int passes) {
    return new Condition(
        Math.min(done, passes),
        nonconformity,
        nonconformingPass,
        rework,
        scrapped,
        done > passes ? BigDecimal.ZERO : turned,
        done > passes ? BigDecimal.ZERO : reached,
        pull,
        last);
  }

  Condition turned(BigDecimal degrees, BigDecimal at) {
    return new Condition(
        done, nonconformity, nonconformingPass, rework, scrapped, degrees, at, pull, last);
  }

  Condition pulled(Optional<Pull> newest) {
    return new Condition(
        done, nonconformity, nonconformingPass, rework, scrapped, turned, reached, newest, last);
  }

  Condition loosened() {
    return atMost(0).turned(BigDecimal.ZERO, BigDecimal.ZERO).pulled(Optional.empty());
  }

  Condition failed(long entry, int pass) {
    return new Condition(
        done,
        OptionalLong.of(entry),
        pass,
        rework,
        scrapped,
        BigDecimal.ZERO,
        BigDecimal.ZERO,
        pull,
        last);
  }

  Condition toRework() {
    return new Condition(
        0,
        OptionalLong.empty(),
        0,
        true,
        scrapped,
        BigDecimal.ZERO,
        BigDecimal.ZERO,
        Optional.empty(),
        last);
  }

  Condition conceded() {
    return new Condition(
        Math.max(done, nonconformingPass + 1),
        OptionalLong.empty(),
        0,
        false,
        scrapped,
        BigDecimal.ZERO,
        BigDecimal.ZERO,
        pull,
        last);
  }

  Condition scrap() {
    return new Condition(
        done, nonconformity, nonconformingPass, rework, true, turned, reached, pull, last);
  }
}
