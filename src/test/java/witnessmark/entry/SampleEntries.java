package witnessmark.entry;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;
import witnessmark.torque.WrenchKind;

/** One entry of every kind. */
public final class SampleEntries {
  private static final Instant AT = Instant.parse("2026-11-25T10:02:03.311Z");
  private static final String KEY =
      "witnessmark.local/log/00112233445566aa+00112233+" + "#".repeat(44);
  private static final Optional<String> BY = Optional.of("badge-07");

  private SampleEntries() {}

  public static List<Entry> all() {
    return List.of(
        new Entry.LogOpened(AT, "witnessmark.local/log/00112233445566aa"),
        new Entry.LogKeyChanged(AT, KEY.replace('#', 'A'), KEY.replace('#', 'B'), "a note\n"),
        new Entry.OperatorEnrolled(
            AT, "badge-07", "first bench", List.of(Role.TECHNICIAN, Role.SECOND), Optional.empty()),
        new Entry.OperatorKeyEnrolled(
            AT, "badge-11", "11qYAYKxCrfVS/7TyWQHOg7hcvPapiMlrwIaaPcHURo=", "badge-11"),
        new Entry.OperatorKeyWithdrawn(AT, "badge-12", "badge-11", "lost"),
        new Entry.WrenchBound(
            AT,
            "TW-0417",
            List.of(
                new Source("bench-1-cable", Optional.empty()),
                new Source("shop-broker", Optional.of("bench-1"))),
            "badge-11"),
        new Entry.WrenchEnrolled(
            AT,
            "TW-0417",
            Torque.parse("20 N.m"),
            Torque.parse("100 N.m"),
            AT,
            AT.plusSeconds(1000),
            Optional.of("C-1"),
            Optional.of(new Digits("1.0")),
            Optional.of(Torque.parse("0.01 N.m")),
            Optional.of(WrenchKind.SETTING),
            Optional.of(false),
            BY),
        new Entry.CalibrationRuled(
            AT,
            WrenchKind.SETTING,
            new Digits("4"),
            Optional.of(Torque.parse("10 N.m")),
            Optional.of(new Digits("6")),
            List.of(new Digits("60"), new Digits("100")),
            5,
            12,
            5000,
            BY),
        new Entry.WrenchCalibrated(
            AT,
            "TW-0417",
            "C-26-118",
            "calibration room",
            AT,
            AT.plusSeconds(1000),
            5000,
            3,
            new Digits("1.0"),
            List.of(point("20.5")),
            List.of(point("20.0")),
            Optional.of(true),
            true,
            BY),
        new Entry.WrenchChecked(
            AT, "TW-0417", "tester-1", List.of(point("20.1")), true, "badge-07"),
        new Entry.CalibrationEnded(
            AT, "TW-0417", AT, CalibrationEnd.CHECK_FAILED, BY, Optional.of("dropped")),
        new Entry.ProcedureReleased(
            AT,
            "RAM-210",
            "C",
            "[procedure]\n",
            List.of(new Acknowledged("band-wide@pivot", "as the maker has it")),
            BY),
        new Entry.OperatorAtStation(AT, "bench-1", "badge-07"),
        new Entry.JobOpened(AT, "J-5", "ATR-26-0147", "bench-1", "RAM-210", "C", 3, BY),
        new Entry.JobSuspended(AT, "J-5", BY, Optional.of("lunch")),
        new Entry.JobResumed(AT, "J-5", "bench-1", BY),
        new Entry.JobClosed(AT, "J-5", BY, OptionalLong.of(43)),
        new Entry.JobAbandoned(AT, "J-5", BY, "carrier cracked", OptionalLong.of(12)),
        new Entry.Attested(AT, "J-5", "wire", "badge-07"),
        new Entry.Measured(
            AT, "J-5", "gap", List.of(new Digits("1.50")), true, "1.50 mm is kept", "badge-07"),
        new Entry.Disposed(
            AT,
            "J-5",
            "pivot/1",
            9,
            Disposition.USE_AS_IS,
            List.of("pinch:final"),
            "badge-07",
            Optional.of(Role.QUALITY),
            Optional.of("C-12"),
            "looked at it"),
        new Entry.Assigned(AT, "J-5", 9, Optional.of(AT), judged(), BY, "badge-07", "I saw it"),
        new Entry.Reread(AT, "J-5", 9, 12, judged()),
        new Entry.SetAside(AT, "J-5", 9, "badge-07", Optional.of(Role.QUALITY), "test rig"),
        torque(),
        new Entry.Scan(
            AT,
            "bench-1",
            "mqtt:shop",
            "carrier-left/3",
            BY,
            Optional.of("J-5"),
            Optional.of("carrier-left/3"),
            Optional.empty(),
            OptionalLong.empty(),
            Meaning.FASTENER,
            "The next reading is for carrier-left/3."),
        new Entry.Scan(
            AT,
            "bench-1",
            "mqtt:shop",
            "ATR-26-0147",
            Optional.empty(),
            Optional.of("J-5"),
            Optional.empty(),
            Optional.of("RAM-210"),
            OptionalLong.of(9),
            Meaning.OPEN,
            "Opened J-5."),
        new Entry.Refused(
            AT,
            Optional.of("bench-1"),
            "mqtt:shop",
            "not JSON",
            new byte[] {1, 2},
            2,
            "a12871fee210fb8619291eaea194581cbd2531e4b23759d225f6806923f63222"),
        new Entry.NotKept(
            AT,
            Optional.of("bench-1"),
            "serial:bench-1-cable",
            17,
            AT,
            AT.plusSeconds(60),
            "nothing could be recorded: the disk is full"));
  }

  public static Entry.TorqueTaken torque() {
    return new Entry.TorqueTaken(
        AT,
        "bench-1",
        "mqtt:shop",
        new TorqueEvent(
            "TW-0417",
            OptionalLong.of(123),
            Optional.of(AT),
            Torque.parse("32.50 N.m"),
            Optional.of(Angle.of("41.2")),
            Optional.of(Torque.parse("3.10 N.m")),
            Direction.CW,
            Optional.empty(),
            BY),
        "{\"wrench\":\"TW-0417\"}",
        "0123456789abcdef0123456789abcdef",
        new Timing(
            AT,
            "corrected",
            Optional.of(new Digits("61.250")),
            Optional.of(true),
            Optional.of(true),
            Optional.of("began-anew")),
        Optional.of("carrier-left/3"),
        BY,
        Optional.of("J-5"),
        judged());
  }

  private static Judged judged() {
    return new Judged(
        Optional.of("carrier-left/3"),
        Optional.of("final"),
        Reason.NEXT_IN_SEQUENCE,
        List.of("carrier-right/3"),
        List.of(Objection.ANGLE_MISSING),
        Optional.of(Verdict.IN_BAND),
        Optional.of("29.7 N.m"),
        Optional.of("36.3 N.m"),
        Optional.empty(),
        Optional.empty(),
        Optional.of(Angle.of("44.7")),
        Optional.of("36.2142857 N.m"),
        Optional.of(Rule.GUARDED),
        Optional.of(new Digits("0.83")),
        Optional.of("0.3 N.m"),
        Effect.CREDITED,
        List.of("pinch:final"),
        "carrier-left/3 is done.");
  }

  private static CalibrationPoint point(String reference) {
    return new CalibrationPoint(
        Torque.parse("20 N.m"), List.of(Torque.parse(reference + " N.m")), new Digits("4"));
  }
}
