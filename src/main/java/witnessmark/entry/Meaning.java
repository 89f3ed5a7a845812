package witnessmark.entry;

/** What a scanned code was taken for. */
public enum Meaning implements Word {
  /** An enrolled badge: its owner works at the station from now on. */
  OPERATOR,
  /** A position of the job: the next torque event at the station is for it. */
  FASTENER,
  /** A procedure: the next unit scanned at the station is worked by it. */
  PROCEDURE,
  /** A unit on which a job is opened. */
  OPEN,
  /** A unit or a job that is taken up again. */
  RESUME,
  /** The job at the station is set aside. */
  SUSPEND,
  /** The job at the station is closed. */
  CLOSE,
  /** An attest step is confirmed. */
  ATTEST,
  /** The next position scanned answers a question. */
  QUESTION,
  /** A position that answers a question. */
  ANSWER,
  /** The torque event that a question is about belongs to no fastener. */
  SET_ASIDE,
  /** How the job stands is told, and nothing changes. */
  STATUS,
  /** Understood, and refused. */
  DECLINED,
  /** The same code again too soon: taken for a second reading of the same scan. */
  REPEATED,
  /** Nothing that is known. */
  NOTHING
}
