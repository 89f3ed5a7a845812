package witnessmark.entry;

/** The decision on a nonconforming fastener. */
public enum Disposition implements Word {
  /** The same fastener is loosened and tightened anew. */
  REWORK,
  /** A new fastener is fitted and tightened. */
  REPLACE,
  /** Accepted as it is, under a concession. */
  USE_AS_IS,
  /** The part cannot be used: the job can only be abandoned. */
  SCRAP
}
