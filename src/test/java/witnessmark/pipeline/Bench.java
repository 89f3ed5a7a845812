package witnessmark.pipeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import witnessmark.decode.Scanned;
import witnessmark.decode.Torqued;
import witnessmark.desk.Command;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Judged;
import witnessmark.entry.Role;
import witnessmark.job.JobState;
import witnessmark.job.Shop;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Angle;
import witnessmark.torque.Digits;
import witnessmark.torque.Direction;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;

/** A shop without a disk: the real decisions and folds on a list of entries. */
public final class Bench implements Cloneable {
  public static final Instant START = Instant.parse("2026-11-25T08:00:00Z");
  public static final String STATION = "bench-1";
  public static final String ORIGIN = "witnessmark.local/log/test";

  private final ListLog log = new ListLog();
  private Shop shop = Shop.EMPTY;
  private Instant now = START;
  private long number;
  private String job;

  /**
   * A shop of one person who answers for quality, too, two wrenches of 20 to 100 N.m (TW-1, TW-2),
   * and an open job.
   */
  public static Bench on(String procedure) {
    Bench bench = without(procedure);
    bench.open("ATR-26-0147");
    return bench;
  }

  /** Opens a job of the first procedure on a unit. */
  public void open(String unit) {
    String id = shop.procedures().get(0).procedure();
    person(new OpenJob(id, Optional.empty(), unit, STATION, Optional.empty()));
    job = shop.active(STATION).orElseThrow().job();
  }

  /** The same shop without a job. */
  public static Bench without(String procedure) {
    Bench bench = empty();
    bench.person(wrench("TW-1"));
    bench.person(wrench("TW-2"));
    bench.release(procedure);
    return bench;
  }

  /** A shop with a badge and nothing else. */
  public static Bench empty() {
    Bench bench = new Bench();
    bench.add(new Entry.LogOpened(START, ORIGIN));
    bench.enrol("badge-07", Role.TECHNICIAN, Role.QUALITY);
    return bench;
  }

  public void release(String procedure) {
    person(new Release(ProcedureFile.parse("test.toml", procedure), procedure, Optional.empty()));
  }

  public void enrol(String badge, Role... roles) {
    person(new EnrolOperator(badge, Optional.empty(), List.of(roles), Optional.empty()));
  }

  public static EnrolWrench wrench(String serial) {
    return wrench(serial, "");
  }

  /**
   * @param uncertainty in per cent of the reading; none where it is empty
   */
  public static EnrolWrench wrench(String serial, String uncertainty) {
    return new EnrolWrench(
        serial,
        Torque.parse("20 N.m"),
        Torque.parse("100 N.m"),
        START.minusSeconds(86_400),
        START.plusSeconds(10L * 86_400),
        Optional.empty(),
        Optional.of(uncertainty).filter(u -> !u.isEmpty()).map(Digits::new),
        Optional.empty());
  }

  /** One tighten step {@code a} of n fasteners at 50 N.m ± 10 %, with further lines. */
  public static String group(int n, String... lines) {
    return head() + step("a", n, lines);
  }

  public static String head() {
    return "[procedure]\nid = \"P-1\"\nrevision = \"A\"\ntitle = \"Test\"\n";
  }

  public static String step(String id, int n, String... lines) {
    return "[[step]]\nid = \""
        + id
        + "\"\nkind = \"tighten\"\ntitle = \""
        + id
        + "\"\nfasteners = "
        + n
        + "\n"
        + (String.join("\n", lines).contains("[[step.pass]]")
            ? ""
            : "torque = \"50 N.m\"\ntolerance = \"10 %\"\n")
        + String.join("\n", lines)
        + "\n";
  }

  public Shop shop() {
    return shop;
  }

  public List<Entry> log() {
    return log.entries();
  }

  public String jobName() {
    return job;
  }

  public JobState job() {
    return shop.jobs().get(job);
  }

  public long size() {
    return log.entries().size();
  }

  /** Carries out a person's command. */
  public void person(Command command) {
    tick();
    command.decide(shop, now).forEach(this::add);
  }

  /** A tightening by TW-1 without angle or position. */
  public Entry.TorqueTaken hit(String torque) {
    return hit("TW-1", torque, "", "");
  }

  /** What is decided on a tightening by TW-1 of so many newton metres and degrees. */
  public Judged pull(String newtonMetres, String angle) {
    return hit("TW-1", newtonMetres + " N.m", angle, "").judged();
  }

  /** A tightening with a named position. */
  public Entry.TorqueTaken hitOn(String fastener, String torque) {
    return hit("TW-1", torque, "", fastener);
  }

  public Entry.TorqueTaken hit(String wrench, String torque, String angle, String fastener) {
    return taken(take(event(wrench, torque, angle, Direction.CW, fastener)));
  }

  public Entry.TorqueTaken loosen(String fastener) {
    return taken(take(event("TW-1", "30 N.m", "", Direction.CCW, fastener)));
  }

  public TorqueEvent event(
      String wrench, String torque, String angle, Direction direction, String fastener) {
    tick();
    return new TorqueEvent(
        wrench,
        OptionalLong.of(++number),
        Optional.of(now),
        Torque.parse(torque),
        angle.isEmpty() ? Optional.empty() : Optional.of(Angle.of(angle)),
        direction,
        fastener.isEmpty() ? Optional.empty() : Optional.of(fastener),
        Optional.empty());
  }

  /** An event arrives. */
  public Outcome take(TorqueEvent event) {
    return take(event, false);
  }

  public Outcome take(TorqueEvent event, boolean redelivered) {
    return arrive(
        new Arrival(
            Optional.of(STATION), "test", now, redelivered, false, new Torqued(event, "raw")));
  }

  /** An event arrives as one of a stored burst. */
  public Outcome takeStored(TorqueEvent event) {
    return arrive(
        new Arrival(Optional.of(STATION), "test", now, false, true, new Torqued(event, "raw")));
  }

  /** Time goes by. */
  public void rest(long seconds) {
    now = now.plusSeconds(seconds);
  }

  public Instant now() {
    return now;
  }

  /** What an event would put on record, without its arriving. */
  Outcome tried(TorqueEvent event) {
    Torqued torqued = new Torqued(event, "raw");
    return Step.take(
        shop, new Arrival(Optional.of(STATION), "test", now, false, false, torqued), log);
  }

  public Outcome scan(String text) {
    tick();
    return scan(STATION, text, Optional.empty(), false);
  }

  /** A scan at any station, which may name who scanned, and may have been delivered before. */
  public Outcome scan(String station, String text, Optional<String> operator, boolean redelivered) {
    Scanned scanned = new Scanned(text, operator, "raw");
    return arrive(new Arrival(Optional.of(station), "test", now, redelivered, false, scanned));
  }

  /** The entry of a scan at the station. */
  public Entry.Scan scanned(String station, String text) {
    tick();
    return (Entry.Scan) scan(station, text, Optional.empty(), false).entries().get(0);
  }

  public Entry.Scan scanned(String text) {
    return scanned(STATION, text);
  }

  /** A tightening at any station. */
  public Entry.TorqueTaken hitAt(String station, String wrench, String torque) {
    Torqued torqued = new Torqued(event(wrench, torque, "", Direction.CW, ""), "raw");
    return taken(arrive(new Arrival(Optional.of(station), "test", now, false, false, torqued)));
  }

  private Outcome arrive(Arrival arrival) {
    Outcome outcome = Step.take(shop, arrival, log);
    outcome.entries().forEach(this::add);
    return outcome;
  }

  /** A person's command, signed where it must be; the bytes that go into the log. */
  public List<byte[]> decided(Command command, Optional<Pen> pen) {
    tick();
    Signing signing = new Signing(ORIGIN, pen);
    List<byte[]> bytes = new ArrayList<>();
    for (Entry entry : command.decide(shop, now)) {
      bytes.add(signing.draft(shop, entry).bytes());
      add(entry);
    }
    return bytes;
  }

  /** A tightening that comes by a link and for a station. */
  public Entry.TorqueTaken hitFrom(String source, String station, String wrench, String torque) {
    tick();
    Torqued torqued = new Torqued(event(wrench, torque, "", Direction.CW, ""), "raw");
    return taken(arrive(new Arrival(Optional.of(station), source, now, false, false, torqued)));
  }

  /** An event arrives by a link. */
  public Outcome takeFrom(String source, TorqueEvent event) {
    return arrive(
        new Arrival(Optional.of(STATION), source, now, false, false, new Torqued(event, "raw")));
  }

  private static Entry.TorqueTaken taken(Outcome outcome) {
    return (Entry.TorqueTaken) outcome.entries().get(0);
  }

  private void add(Entry entry) {
    shop = shop.after(log.append(entry), entry);
  }

  private void tick() {
    now = now.plusSeconds(5);
  }

  /** The shop that the log's bytes alone give. */
  public Shop replayed() {
    Shop replay = Shop.EMPTY;
    for (int n = 0; n < log().size(); n++) {
      replay = replay.after(n, EntryJson.read(EntryJson.bytes(log().get(n))));
    }
    return replay;
  }
}
