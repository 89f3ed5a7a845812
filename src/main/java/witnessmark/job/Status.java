package witnessmark.job;

import java.util.Locale;

/** Where a job is in its life. Ended jobs are not kept in memory. */
public enum Status {
  OPEN,
  SUSPENDED;

  public String code() {
    return name().toLowerCase(Locale.ROOT);
  }
}
