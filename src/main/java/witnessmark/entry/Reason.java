package witnessmark.entry;

/** Why a torque event was placed on a fastener, or on none. */
public enum Reason implements Word {
  /** The one fastener that the order of work makes next. */
  NEXT_IN_SEQUENCE(true),
  /** A group that may be done in any order: credited by count, the position was not observed. */
  COUNTED_IN_GROUP(true),
  /** The event itself names the fastener. */
  NAMED_BY_EVENT(true),
  /** A scan just before names the fastener. */
  NAMED_BY_SCAN(true),
  /** Several fasteners could be next; the reading lies in the band of only one of them. */
  ONLY_BAND_THAT_FITS(true),
  /** Several fasteners could be next; torque and angle together fit only one of them. */
  ONLY_ANGLE_THAT_FITS(true),
  /** Several fasteners could be next; this wrench may be used on only one of them. */
  ONLY_PLACE_FOR_WRENCH(true),
  /** The named fastener is tight already: it was hit again. */
  HIT_AGAIN(true),
  /** It hardly turned: not the expected one, but a tight one that was hit again. */
  HIT_AGAIN_BY_ANGLE(true),
  /** It hardly turned, and is to be reworked or replaced: it is as it was. */
  NOT_REPLACED(true),
  /** It began to turn near its peak only: a tight one that was hit again. */
  HIT_AGAIN_BY_BREAKAWAY(true),
  /** It came sooner than a hand reaches the next: the one just pulled was hit again. */
  HIT_AGAIN_BY_TIME(true),
  /** Loosening of the one fastener that is to be reworked or replaced. */
  LOOSENED_FOR_REWORK(true),
  /** Loosening, and only one fastener of the job has been tightened at all. */
  ONLY_ONE_TIGHT(true),
  /** A person said which fastener it was. */
  ASSIGNED_BY_PERSON(true),
  /** The named fastener is not due yet. */
  NOT_DUE_YET(true),
  /** The named fastener waits for a disposition. */
  WAITS_FOR_DISPOSITION(true),
  /**
   * The named fastener is pending and was tight all the same: it is one of its group that was
   * counted under another's name, and the event stands on that.
   */
  TIGHT_BEFORE(true),
  /** No job is active at the station. */
  NO_ACTIVE_JOB(false),
  /** It came late, and the job that was open when it happened has ended. */
  LATE_FOR_ENDED_JOB(false),
  /** The job's procedure has no fastener of that name. */
  NO_SUCH_FASTENER(false),
  /** Nothing can be tightened until a person confirms, measures, disposes or answers. */
  JOB_WAITS(false),
  /** Every fastener of the job is done. */
  NOTHING_LEFT(false),
  /** More than one fastener could be meant. */
  SEVERAL_POSSIBLE(false),
  /** The expected fastener or a tight one that was hit again: the reading leaves it open. */
  NEXT_OR_AGAIN(false),
  /** Above the band of the expected fastener, and right for another one still to be tightened. */
  FITS_ELSEWHERE(false),
  /** Something was loosened, and it is not known what. */
  LOOSENED_WHICH(false),
  /** Looks like an event already taken, but the wrench sent no number to tell for sure. */
  PERHAPS_REPEATED(false);

  private final boolean placed;

  Reason(boolean placed) {
    this.placed = placed;
  }

  /** Whether a fastener that was tight already was hit again. */
  public boolean again() {
    return this == HIT_AGAIN
        || this == HIT_AGAIN_BY_ANGLE
        || this == NOT_REPLACED
        || this == HIT_AGAIN_BY_BREAKAWAY
        || this == HIT_AGAIN_BY_TIME
        || this == TIGHT_BEFORE;
  }

  /** Whether the event was a tightening of which a person must say where it was. */
  public boolean asks() {
    return this == SEVERAL_POSSIBLE || this == NEXT_OR_AGAIN || this == FITS_ELSEWHERE;
  }

  /** Whether the event belongs to a fastener. */
  public boolean placed() {
    return placed;
  }
}
