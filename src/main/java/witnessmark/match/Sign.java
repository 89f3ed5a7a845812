package witnessmark.match;

/** What a reading shows of the fastener before the pull, if it was the one expected. */
enum Sign {
  /** It was still to be tightened: it turned as such a one does. */
  FRESH,
  /** It was tight already. */
  TIGHT,
  /** Both could be. */
  EITHER,
  /** The reading says nothing about it. */
  SILENT
}
