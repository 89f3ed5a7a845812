package witnessmark.log;

import java.nio.file.Path;

/** What is logged, how and where. Takes effect only before the first line is. */
public final class Logs {
  static final String LEVEL = "witnessmark.log";
  static final String FORM = "witnessmark.log.form";
  static final String FILE = "witnessmark.log.file";

  private Logs() {}

  /** How much, unless the system property says it already. */
  public static void at(Volume volume) {
    if (System.getProperty(LEVEL) == null) {
      System.setProperty(LEVEL, volume.name());
    }
  }

  /** In which form. */
  public static void write(Form form) {
    System.setProperty(FORM, form.name());
  }

  /** To a file, too, which is turned over by day and size. */
  public static void keep(Path file) {
    System.setProperty(FILE, file.toAbsolutePath().toString());
  }
}
