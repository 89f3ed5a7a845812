package witnessmark.desk;

/** The answer to a command is no; the message says why and what to do next. */
public final class Declined extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final String sentence;

  public Declined(String why) {
    this(why, why);
  }

  /**
   * @param sentence what fits two lines
   * @param whole the same with all there is to say, on as many lines as it takes
   */
  public Declined(String sentence, String whole) {
    super(whole, null, false, false);
    this.sentence = sentence;
  }

  /** The answer where there is room for two lines only. */
  public String sentence() {
    return sentence;
  }
}
