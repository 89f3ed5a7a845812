package witnessmark.entry;

import com.fasterxml.jackson.annotation.JsonIgnoreProperties;
import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.annotation.JsonPropertyOrder;
import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonUnwrapped;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.WrenchKind;

/**
 * One record of the log. The record's components are the fields of the entry's JSON; what a person
 * signed has two more ({@link Signed}).
 */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
@JsonSubTypes({
  @JsonSubTypes.Type(value = Entry.LogOpened.class, name = "log-opened"),
  @JsonSubTypes.Type(value = Entry.LogKeyChanged.class, name = "log-key-changed"),
  @JsonSubTypes.Type(value = Entry.OperatorEnrolled.class, name = "operator-enrolled"),
  @JsonSubTypes.Type(value = Entry.OperatorKeyEnrolled.class, name = "operator-key-enrolled"),
  @JsonSubTypes.Type(value = Entry.OperatorKeyWithdrawn.class, name = "operator-key-withdrawn"),
  @JsonSubTypes.Type(value = Entry.WrenchEnrolled.class, name = "wrench-enrolled"),
  @JsonSubTypes.Type(value = Entry.WrenchBound.class, name = "wrench-bound"),
  @JsonSubTypes.Type(value = Entry.CalibrationRuled.class, name = "calibration-ruled"),
  @JsonSubTypes.Type(value = Entry.WrenchCalibrated.class, name = "wrench-calibrated"),
  @JsonSubTypes.Type(value = Entry.WrenchChecked.class, name = "wrench-checked"),
  @JsonSubTypes.Type(value = Entry.CalibrationEnded.class, name = "calibration-ended"),
  @JsonSubTypes.Type(value = Entry.ProcedureReleased.class, name = "procedure-released"),
  @JsonSubTypes.Type(value = Entry.OperatorAtStation.class, name = "operator-at-station"),
  @JsonSubTypes.Type(value = Entry.JobOpened.class, name = "job-opened"),
  @JsonSubTypes.Type(value = Entry.JobSuspended.class, name = "job-suspended"),
  @JsonSubTypes.Type(value = Entry.JobResumed.class, name = "job-resumed"),
  @JsonSubTypes.Type(value = Entry.JobClosed.class, name = "job-closed"),
  @JsonSubTypes.Type(value = Entry.JobAbandoned.class, name = "job-abandoned"),
  @JsonSubTypes.Type(value = Entry.Attested.class, name = "attested"),
  @JsonSubTypes.Type(value = Entry.Measured.class, name = "measured"),
  @JsonSubTypes.Type(value = Entry.Disposed.class, name = "disposed"),
  @JsonSubTypes.Type(value = Entry.Assigned.class, name = "assigned"),
  @JsonSubTypes.Type(value = Entry.SetAside.class, name = "set-aside"),
  @JsonSubTypes.Type(value = Entry.Reread.class, name = "reread"),
  @JsonSubTypes.Type(value = Entry.TorqueTaken.class, name = "torque"),
  @JsonSubTypes.Type(value = Entry.Scan.class, name = "scan"),
  @JsonSubTypes.Type(value = Entry.Refused.class, name = "refused"),
  @JsonSubTypes.Type(value = Entry.NotKept.class, name = "not-kept")
})
@JsonPropertyOrder({"v", "at"})
@JsonIgnoreProperties(
    value = {"v", "key", "signature"},
    allowGetters = true)
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public sealed interface Entry {
  /** When the bridge took it, UTC. */
  Instant at();

  /** The form's version. */
  @JsonProperty("v")
  default int version() {
    return 1;
  }

  /** The log began; always entry 0. */
  record LogOpened(Instant at, String origin) implements Entry {}

  /**
   * The log's key was replaced; from this entry on the checkpoints are signed by the new one.
   *
   * @param from the verifier key that signed before
   * @param to the verifier key that signs from here on
   * @param voucher a signed note of the old key over the new one and this entry's number
   */
  record LogKeyChanged(Instant at, String from, String to, String voucher) implements Entry {}

  /**
   * A badge became known, or its name or roles changed.
   *
   * @param roles what the person may answer for; none where that was not said, which is a
   *     technician
   */
  record OperatorEnrolled(
      Instant at, String operator, String name, List<Role> roles, Optional<String> by)
      implements Entry {
    public OperatorEnrolled {
      roles = roles == null ? List.of() : List.copyOf(roles);
    }
  }

  /**
   * The public half of a person's key: from now on the badge decides with it.
   *
   * @param publicKey the 32 bytes of an Ed25519 public key in base64
   */
  record OperatorKeyEnrolled(Instant at, String operator, String publicKey, String by)
      implements Entry {}

  /** A badge's key is no longer in force, as when it was lost. */
  record OperatorKeyWithdrawn(Instant at, String operator, String by, String because)
      implements Entry {}

  /**
   * A wrench became known, or its data were renewed.
   *
   * @param low lower end of its range
   * @param high upper end of its range
   * @param calibrated start of the day (UTC) of its calibration
   * @param due moment from which the calibration is no longer in force
   * @param uncertainty expanded uncertainty in per cent of the reading, k = 2
   * @param resolution the smallest step of its reading
   * @param type indicating or setting; indicating where it does not say
   * @param angle whether it reports an angle; it does where it does not say
   */
  record WrenchEnrolled(
      Instant at,
      String wrench,
      Torque low,
      Torque high,
      Instant calibrated,
      Instant due,
      Optional<String> certificate,
      Optional<Digits> uncertainty,
      Optional<Torque> resolution,
      Optional<WrenchKind> type,
      Optional<Boolean> angle,
      Optional<String> by)
      implements Entry {}

  /**
   * From which sources a wrench may report from now on.
   *
   * @param sources empty for all
   */
  record WrenchBound(Instant at, String wrench, List<Source> sources, String by) implements Entry {
    public WrenchBound {
      sources = sources == null ? List.of() : List.copyOf(sources);
    }
  }

  /**
   * How wrenches of a type are to be calibrated from now on.
   *
   * @param type the type it is for
   * @param deviation permissible deviation in per cent of the reference
   * @param smallUpTo torque up to which, included, another deviation is permissible
   * @param smallDeviation that deviation
   * @param points shares of the range's upper end in per cent, beside its lower end
   * @param readings how many at each point, at least
   * @param months after how many it is due
   * @param operations after how many readings it is due
   */
  record CalibrationRuled(
      Instant at,
      WrenchKind type,
      Digits deviation,
      Optional<Torque> smallUpTo,
      Optional<Digits> smallDeviation,
      List<Digits> points,
      int readings,
      int months,
      long operations,
      Optional<String> by)
      implements Entry {
    public CalibrationRuled {
      points = List.copyOf(points);
    }
  }

  /**
   * A laboratory calibrated a wrench.
   *
   * @param calibrated start of the day (UTC) of the calibration
   * @param due moment from which it is no longer in force
   * @param operations readings after which it is no longer in force
   * @param used readings on record already that were taken since
   * @param uncertainty expanded uncertainty in per cent of the reading, k = 2
   * @param found how the wrench came in; empty where the laboratory does not say
   * @param left how it went out
   * @param foundWithin whether it came in within the permissible deviation; empty with {@code
   *     found}
   * @param leftWithin whether it went out within it; only then is the calibration in force
   */
  record WrenchCalibrated(
      Instant at,
      String wrench,
      String certificate,
      String laboratory,
      Instant calibrated,
      Instant due,
      long operations,
      long used,
      Digits uncertainty,
      List<CalibrationPoint> found,
      List<CalibrationPoint> left,
      Optional<Boolean> foundWithin,
      boolean leftWithin,
      Optional<String> by)
      implements Entry {
    public WrenchCalibrated {
      found = found == null ? List.of() : List.copyOf(found);
      left = List.copyOf(left);
    }
  }

  /**
   * A wrench was checked on the shop's own tester.
   *
   * @param tester what it was checked on
   * @param points what it did
   * @param within whether it kept the permissible deviation at each
   */
  record WrenchChecked(
      Instant at,
      String wrench,
      String tester,
      List<CalibrationPoint> points,
      boolean within,
      String by)
      implements Entry {
    public WrenchChecked {
      points = List.copyOf(points);
    }
  }

  /**
   * A wrench's calibration is no longer in force, whatever its due date.
   *
   * @param from moment from which it is not
   */
  record CalibrationEnded(
      Instant at,
      String wrench,
      Instant from,
      CalibrationEnd cause,
      Optional<String> by,
      Optional<String> because)
      implements Entry {}

  /**
   * A revision of a procedure was released; {@code text} is the file, unchanged.
   *
   * @param acknowledged findings that {@code by} had looked at and let stand; none where that was
   *     not said
   */
  record ProcedureReleased(
      Instant at,
      String procedure,
      String revision,
      String text,
      List<Acknowledged> acknowledged,
      Optional<String> by)
      implements Entry {
    public ProcedureReleased {
      acknowledged = acknowledged == null ? List.of() : List.copyOf(acknowledged);
    }
  }

  /** A person began to work at a station. */
  record OperatorAtStation(Instant at, String station, String operator) implements Entry {}

  /**
   * A job began.
   *
   * @param released the entry that released its procedure revision
   */
  record JobOpened(
      Instant at,
      String job,
      String unit,
      String station,
      String procedure,
      String revision,
      long released,
      Optional<String> by)
      implements Entry {}

  /** A job was set aside; its station is free. */
  record JobSuspended(Instant at, String job, Optional<String> by, Optional<String> because)
      implements Entry {}

  /** A suspended job goes on at a station. */
  record JobResumed(Instant at, String job, String station, Optional<String> by) implements Entry {}

  /**
   * Every fastener and gate of the job stands.
   *
   * @param entries how many entries the job has, scans aside, from its opening to this one; empty
   *     in older entries
   */
  record JobClosed(Instant at, String job, Optional<String> by, OptionalLong entries)
      implements Entry {
    public JobClosed {
      entries = entries == null ? OptionalLong.empty() : entries;
    }
  }

  /**
   * The job was ended incomplete.
   *
   * @param entries how many entries the job has, scans aside, from its opening to this one; empty
   *     in older entries
   */
  record JobAbandoned(
      Instant at, String job, Optional<String> by, String because, OptionalLong entries)
      implements Entry {
    public JobAbandoned {
      entries = entries == null ? OptionalLong.empty() : entries;
    }
  }

  /** A person confirmed an attest step. */
  record Attested(Instant at, String job, String step, String by) implements Entry {}

  /**
   * A person entered the numbers of a measure step.
   *
   * @param within whether all limits are kept
   * @param text which limit was missed, or that all are kept
   */
  record Measured(
      Instant at,
      String job,
      String step,
      List<Digits> values,
      boolean within,
      String text,
      String by)
      implements Entry {
    public Measured {
      values = List.copyOf(values);
    }
  }

  /**
   * A person decided on a nonconforming fastener.
   *
   * @param nonconformity the entry that made it nonconforming
   * @param undoes stages that are pending again because of it
   * @param role in which the person decided; empty where there were no roles yet
   * @param concession number of the concession it is used under
   */
  record Disposed(
      Instant at,
      String job,
      String fastener,
      long nonconformity,
      Disposition disposition,
      List<String> undoes,
      String by,
      Optional<Role> role,
      Optional<String> concession,
      String because)
      implements Entry {
    public Disposed {
      undoes = undoes == null ? List.of() : List.copyOf(undoes);
    }
  }

  /**
   * A person said which fastener an event belongs to.
   *
   * @param assigns the torque event's entry
   * @param moment where the event stands in the job, for one that was not in it before
   * @param operator whose reading it was, where that is on record
   */
  record Assigned(
      Instant at,
      String job,
      long assigns,
      Optional<Instant> moment,
      @JsonUnwrapped Judged judged,
      Optional<String> operator,
      String by,
      String because)
      implements Entry {}

  /**
   * A torque event was decided anew, because something that happened before it became known.
   *
   * @param rereads the torque event's entry
   * @param because the entry that made it known
   */
  record Reread(Instant at, String job, long rereads, long because, @JsonUnwrapped Judged judged)
      implements Entry {}

  /**
   * A person said that an event that asked for a fastener belongs to none of this job.
   *
   * @param sets the torque event's entry
   * @param role that it took, where the reading was too much for what was asked about
   */
  record SetAside(Instant at, String job, long sets, String by, Optional<Role> role, String because)
      implements Entry {}

  /**
   * A torque event and what was decided about it.
   *
   * @param source the link and channel it came by
   * @param raw the event's own text as received
   * @param fingerprint SHA-256 over what makes a repeat recognisable
   * @param timing when it happened, and how that is known
   * @param scanned the fastener that a scan had named for it
   * @param operator who works at the station, where the event itself does not say
   */
  record TorqueTaken(
      Instant at,
      String station,
      String source,
      TorqueEvent event,
      String raw,
      String fingerprint,
      @JsonUnwrapped Timing timing,
      Optional<String> scanned,
      Optional<String> operator,
      Optional<String> job,
      @JsonUnwrapped Judged judged)
      implements Entry {
    /** The moment by which it stands in its job: when it came, or when it happened if late. */
    public Instant place() {
      return timing.tardy() ? timing.moment() : at;
    }

    /** When it happened. */
    public Instant moment() {
      return timing.moment();
    }
  }

  /**
   * Something was scanned.
   *
   * @param operator who scanned, where the scanner says
   * @param job the job active there, or the one that the scan opens or resumes
   * @param fastener which the next torque event there is for
   * @param procedure with {@link Meaning#PROCEDURE} by which the next unit scanned there is worked;
   *     with any other meaning such a choice, which this scan used up
   * @param question with {@link Meaning#QUESTION} the torque event's entry that the next position
   *     scanned there answers; with any other meaning such a question, which this scan was taken
   *     for
   * @param text the meaning in a sentence
   */
  record Scan(
      Instant at,
      String station,
      String source,
      String scan,
      Optional<String> operator,
      Optional<String> job,
      Optional<String> fastener,
      Optional<String> procedure,
      OptionalLong question,
      Meaning meaning,
      String text)
      implements Entry {}

  /**
   * Bytes that could not be taken.
   *
   * @param reason what is wrong with them
   * @param head their first 4 KiB in base64
   * @param length how many there were
   * @param sha256 SHA-256 of all of them, lower-case hexadecimal
   */
  record Refused(
      Instant at,
      Optional<String> station,
      String source,
      String reason,
      byte[] head,
      long length,
      String sha256)
      implements Entry {}

  /**
   * Messages of one source that were heard and lost: they could not be recorded, their sender does
   * not send them again, and there was no room left to keep them in.
   *
   * @param messages how many
   * @param first when the bridge heard the first of them
   * @param last when it heard the last of them
   * @param because why they could not be recorded
   */
  record NotKept(
      Instant at,
      Optional<String> station,
      String source,
      long messages,
      Instant first,
      Instant last,
      String because)
      implements Entry {}

  /** The wrench's own event number, where it sent one; for look-up. */
  static OptionalLong number(Entry entry) {
    return entry instanceof TorqueTaken t ? t.event().number() : OptionalLong.empty();
  }
}
