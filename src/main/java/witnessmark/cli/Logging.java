package witnessmark.cli;

/** How much is logged. Takes effect only before the first line is. */
final class Logging {
  private Logging() {}

  /** For a daemon: what it does, not only what fails. */
  static void chatty() {
    if (System.getProperty("witnessmark.log") == null) {
      System.setProperty("witnessmark.log", "INFO");
    }
  }
}
