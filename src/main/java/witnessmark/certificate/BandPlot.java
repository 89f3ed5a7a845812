package witnessmark.certificate;

import java.util.Optional;
import witnessmark.procedure.Pass;
import witnessmark.record.Attempt;
import witnessmark.torque.Torque;

/**
 * A reading beside its band: the band half of the width, a dot where the torque lies, the guard
 * bands shaded at both limits. A torque beyond the ends is an arrowhead there. For the eye only:
 * verdicts are decided in exact decimals.
 */
final class BandPlot {
  private static final float DOT = 2.1f;

  private final Sheet sheet;
  private final float x;
  private final float width;
  private final float middle;
  private final double from;
  private final double span;

  private BandPlot(Sheet sheet, Pass pass, float x, float width, float middle) {
    this.sheet = sheet;
    this.x = x;
    this.width = width;
    this.middle = middle;
    double low = pass.band().low().newtonMetres().doubleValue();
    double high = pass.band().high().newtonMetres().doubleValue();
    double half = high > low ? (high - low) / 2 : Math.max(low / 10, 0.1);
    this.from = low - half;
    this.span = high - low + 2 * half;
  }

  /**
   * Draws it.
   *
   * @param x its left end
   * @param middle its middle height
   */
  static void draw(Sheet sheet, Pass pass, Optional<Attempt> attempt, float[] place) {
    BandPlot plot = new BandPlot(sheet, pass, place[0], place[1], place[2]);
    plot.scale(pass, attempt.flatMap(a -> a.judged().guard()));
    // what was loosened, or came before its turn, was not measured against the band
    attempt.filter(a -> a.judged().verdict().isPresent()).ifPresent(plot::reading);
  }

  private void scale(Pass pass, Optional<String> guard) {
    double low = pass.band().low().newtonMetres().doubleValue();
    double high = pass.band().high().newtonMetres().doubleValue();
    sheet.add(Mark.box(Ink.BAND, at(low), middle - 3f, at(high) - at(low), 6f));
    guard.ifPresent(
        g -> {
          double w = Torque.parse(g).newtonMetres().doubleValue();
          zone(low - w, low + w);
          zone(high - w, high + w);
        });
    sheet.add(Mark.line(Ink.QUIET, 0.4f, x, middle, x + width, middle));
    sheet.add(Mark.line(Ink.QUIET, 0.6f, at(low), middle - 3.6f, at(low), middle + 3.6f));
    sheet.add(Mark.line(Ink.QUIET, 0.6f, at(high), middle - 3.6f, at(high), middle + 3.6f));
  }

  private void zone(double low, double high) {
    sheet.add(Mark.box(Ink.GUARD, at(low), middle - 3f, at(high) - at(low), 6f));
  }

  private void reading(Attempt attempt) {
    double torque =
        attempt
            .judged()
            .atFastener()
            .map(Torque::parse)
            .orElse(attempt.taken().event().torque())
            .newtonMetres()
            .doubleValue();
    Ink ink = attempt.stands() ? Ink.GOOD : attempt.undone() ? Ink.QUIET : Ink.BAD;
    if (torque < from) {
      sheet.add(Mark.shape(ink, x - 1, middle, x + 3, middle + 2.6f, x + 3, middle - 2.6f));
    } else if (torque > from + span) {
      float end = x + width;
      sheet.add(Mark.shape(ink, end + 1, middle, end - 3, middle + 2.6f, end - 3, middle - 2.6f));
    } else {
      sheet.add(Mark.disc(ink, at(torque), middle, DOT));
    }
  }

  /** Where a torque in newton metres lies; the ends where it lies beyond them. */
  private float at(double torque) {
    double share = Math.min(1, Math.max(0, (torque - from) / span));
    return (float) (x + width * share);
  }
}
