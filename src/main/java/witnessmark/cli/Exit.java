package witnessmark.cli;

/** Exit statuses. */
final class Exit {
  static final int YES = 0;
  static final int NO = 1;
  static final int USAGE = 2;
  static final int INPUT = 3;
  static final int SURROUNDINGS = 4;

  private Exit() {}
}
