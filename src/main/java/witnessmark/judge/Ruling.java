package witnessmark.judge;

import java.math.BigDecimal;
import java.util.Optional;
import witnessmark.entry.Rule;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Tool;
import witnessmark.torque.Adapter;
import witnessmark.torque.Band;
import witnessmark.torque.Digits;
import witnessmark.torque.Rounded;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;
import witnessmark.torque.Verdict;
import witnessmark.wrench.Fitness;
import witnessmark.wrench.Wrench;

/**
 * What a decision rule says about the torque at a fastener.
 *
 * <p>Guarded: with the guard band w = r·U it is in the band where T − w and T + w are (limits
 * included), below where T + w is, above where T − w is, and undecided else. U is a share of the
 * reading, and so the same share of the torque at the fastener: what the lengths of an adapter are
 * uncertain by is not in it. All of it is compared in exact decimals.
 *
 * @param side on which side of the band it is, or, where undecided, near which limit; near both, it
 *     is the upper one that counts
 * @param decided whether the rule decides it
 * @param rule the rule that was used: a guarded step is decided simply where the wrench's
 *     uncertainty is not known, and then nothing can be accepted
 * @param factor r, where guarded
 * @param guard w as text, where guarded
 */
record Ruling(
    Side side, boolean decided, Rule rule, Optional<Digits> factor, Optional<String> guard) {

  static Ruling of(Pass pass, Tool tool, Torque reading, Optional<Wrench> wrench) {
    Optional<BigDecimal> factor = tool.acceptance().guard();
    Optional<BigDecimal> share = factor.flatMap(r -> wrench.flatMap(w -> Fitness.share(r, w)));
    if (share.isEmpty()) {
      return new Ruling(
          tool.lever().side(pass.band(), reading),
          true,
          Rule.SIMPLE,
          Optional.empty(),
          Optional.empty());
    }
    BigDecimal least = BigDecimal.ONE.subtract(share.get());
    BigDecimal most = BigDecimal.ONE.add(share.get());
    Adapter lever = tool.lever();
    Band band = pass.band();
    boolean above = lever.compare(reading, least, band.high()) > 0;
    boolean below = lever.compare(reading, most, band.low()) < 0;
    boolean nearHigh = lever.compare(reading, most, band.high()) > 0;
    boolean nearLow = lever.compare(reading, least, band.low()) < 0;
    Side side = nearHigh ? Side.ABOVE : nearLow ? Side.BELOW : Side.INSIDE;
    return new Ruling(
        side,
        above || below || side == Side.INSIDE,
        Rule.GUARDED,
        factor.map(r -> new Digits(r.toPlainString())),
        Optional.of(guard(lever, reading, share.get())));
  }

  private static String guard(Adapter lever, Torque reading, BigDecimal share) {
    BigDecimal atDrive = reading.digits().value().multiply(share);
    return Rounded.text(lever.atFastener(atDrive, Rounded.RECORD), Rounded.RECORD)
        + " "
        + reading.unit();
  }

  /** The verdict on the torque alone. */
  Verdict verdict() {
    if (!decided) {
      return Verdict.UNDECIDED;
    }
    return switch (side) {
      case BELOW -> Verdict.UNDER_TORQUE;
      case INSIDE -> Verdict.IN_BAND;
      case ABOVE -> Verdict.OVER_TORQUE;
    };
  }
}
