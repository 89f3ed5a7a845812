package witnessmark.fuzz;

/**
 * An input that a parser did not stand.
 *
 * @param target the parser's name
 * @param what what happened, one line that is the same for the same fault
 * @param input the bytes, as small as they could be made
 */
record Fault(String target, String what, byte[] input) {
  /** The fault that an input is, or null. */
  static <A> Fault of(Target<A> target, byte[] input) {
    Meter.Measured<A> measured = Meter.once(target, input);
    String what = thrown(target, input, measured);
    if (what == null && (slow(measured) || large(target, input, measured))) {
      measured = Meter.least(target, input);
      what =
          slow(measured)
              ? "took more than 100 ms"
              : large(target, input, measured) ? "allocated more than allowed" : null;
    }
    return what == null ? null : new Fault(target.name(), what, input);
  }

  static boolean slow(Meter.Measured<?> measured) {
    return measured.nanos() > Worker.LIMIT_NANOS;
  }

  static boolean large(Target<?> target, byte[] input, Meter.Measured<?> measured) {
    return measured.allocated() > target.allowance().of(input);
  }

  private static <A> String thrown(Target<A> target, byte[] input, Meter.Measured<A> measured) {
    if (measured.thrown() != null) {
      return line(measured.thrown());
    }
    try {
      target.judge(input, measured.answer());
      return null;
    } catch (RuntimeException | AssertionError e) {
      return line(e);
    }
  }

  /** Its class and where of ours it came from, which is the same for the same fault. */
  private static String line(Throwable e) {
    for (StackTraceElement at : e.getStackTrace()) {
      if (at.getClassName().startsWith("witnessmark.")) {
        return e.getClass().getName() + " at " + at;
      }
    }
    return e.getClass().getName();
  }
}
