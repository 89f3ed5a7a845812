package witnessmark.desk;

/** The answer to a command is no; the message says why and what to do next. */
public final class Declined extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public Declined(String why) {
    super(why, null, false, false);
  }
}
