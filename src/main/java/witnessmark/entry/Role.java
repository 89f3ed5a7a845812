package witnessmark.entry;

/** What a person may answer for; each may what those before it may. */
public enum Role implements Word {
  /** Works at a bench. */
  TECHNICIAN,
  /** Looks again at what another person did. */
  SECOND,
  /** Answers for what leaves the shop. */
  QUALITY;

  /** Whether the role suffices where at least the other is asked for. */
  public boolean covers(Role least) {
    return compareTo(least) >= 0;
  }
}
