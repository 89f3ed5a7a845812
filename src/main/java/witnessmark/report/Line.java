package witnessmark.report;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Moments;
import witnessmark.entry.Word;
import witnessmark.torque.Angle;
import witnessmark.torque.Torque;
import witnessmark.torque.Verdict;

/**
 * An entry as a row of columns; what it has not is an empty text.
 *
 * @param cells one for each of {@link #COLUMNS}
 */
public record Line(List<String> cells) {
  /** The columns' names, in order. */
  public static final List<String> COLUMNS =
      List.of(
          "entry",
          "at",
          "kind",
          "job",
          "station",
          "fastener",
          "pass",
          "torque",
          "unit",
          "angle",
          "direction",
          "wrench",
          "event",
          "operator",
          "verdict",
          "effect",
          "reason",
          "low",
          "lowunit",
          "high",
          "highunit",
          "atfastener",
          "rule",
          "guard",
          "text",
          "assembly",
          "procedure",
          "revision");

  private static final Map<String, Integer> PLACES = places();

  public Line {
    cells = List.copyOf(cells);
    if (cells.size() != COLUMNS.size()) {
      throw new IllegalArgumentException("a line has " + COLUMNS.size() + " cells");
    }
  }

  /** The row of an entry. */
  public static Line of(long n, Entry entry) {
    return of(n, entry, Map.of());
  }

  /**
   * The row of an entry.
   *
   * @param jobs by name, to tell which unit a job assembles and by what
   */
  public static Line of(long n, Entry entry, Map<String, Assembly> jobs) {
    Cells cells = new Cells().set("entry", Long.toString(n)).set("at", Moments.text(entry.at()));
    fill(cells.set("kind", Kinds.of(entry)), entry);
    Assembly job = jobs.get(cells.get("job"));
    if (job != null) {
      cells.set("assembly", job.unit());
      cells.set("procedure", job.procedure()).set("revision", job.revision());
    }
    return new Line(cells.inOrder());
  }

  /** The cell of a column. */
  public String cell(String column) {
    return cells.get(PLACES.get(column));
  }

  private static void fill(Cells c, Entry entry) {
    if (entry instanceof Entry.TorqueTaken e) {
      c.set("job", e.job()).set("station", e.station()).set("wrench", e.event().wrench());
      c.set("torque", e.event().torque().digits().text());
      c.set("unit", e.event().torque().unit().symbol());
      c.set("angle", e.event().angle().map(Angle::toString));
      c.set("direction", e.event().direction().code());
      c.set("operator", e.event().operator().or(e::operator));
      e.event().number().ifPresent(number -> c.set("event", Long.toString(number)));
      judged(c, e.judged());
    } else if (entry instanceof Entry.Assigned e) {
      judged(c.set("job", e.job()).set("operator", e.by()), e.judged());
      c.set(
          "text", "Entry " + e.assigns() + " assigned (" + e.because() + "). " + e.judged().text());
    } else if (entry instanceof Entry.Reread e) {
      judged(c.set("job", e.job()), e.judged());
      c.set("text", "Entry " + e.rereads() + ": " + e.judged().text());
    } else if (entry instanceof Entry.SetAside e) {
      c.set("job", e.job()).set("operator", e.by());
      c.set("text", "Entry " + e.sets() + " set aside: " + e.because());
    } else if (entry instanceof Entry.Disposed e) {
      c.set("job", e.job()).set("fastener", e.fastener()).set("operator", e.by());
      c.set(
          "text",
          e.disposition().code()
              + e.concession().map(n -> " under concession " + n).orElse("")
              + e.role().map(r -> ", decided as " + r.code()).orElse("")
              + ": "
              + e.because()
              + " (nonconformity of entry "
              + e.nonconformity()
              + ")");
    } else if (entry instanceof Entry.Attested e) {
      c.set("job", e.job()).set("operator", e.by()).set("text", "Confirmed " + e.step() + ".");
    } else if (entry instanceof Entry.Measured e) {
      c.set("job", e.job()).set("operator", e.by());
      String values = String.join(", ", e.values().stream().map(Object::toString).toList());
      c.set("text", "Measured " + e.step() + ": " + values + ". " + e.text());
    } else if (entry instanceof Entry.Scan e) {
      c.set("job", e.job()).set("station", e.station()).set("fastener", e.fastener());
      c.set("operator", e.operator()).set("text", "Scanned \"" + e.scan() + "\". " + e.text());
    } else if (entry instanceof Entry.Refused e) {
      c.set("station", e.station());
      c.set("text", "Refused " + e.length() + " bytes from " + e.source() + ": " + e.reason());
    } else if (entry instanceof Entry.NotKept e) {
      c.set("station", e.station());
      c.set(
          "text",
          "Not kept: "
              + e.messages()
              + (e.messages() == 1 ? " message from " : " messages from ")
              + e.source()
              + ", "
              + Moments.text(e.first())
              + " to "
              + Moments.text(e.last())
              + ", because "
              + e.because());
    } else {
      Registers.fill(c, entry);
    }
  }

  private static Map<String, Integer> places() {
    Map<String, Integer> places = new HashMap<>();
    COLUMNS.forEach(c -> places.put(c, places.size()));
    return places;
  }

  private static void judged(Cells c, Judged judged) {
    c.set("fastener", judged.fastener()).set("pass", judged.pass());
    c.set("verdict", judged.verdict().map(Verdict::code));
    c.set("effect", judged.effect().code()).set("reason", judged.reason().code());
    c.set("atfastener", judged.atFastener()).set("rule", judged.rule().map(Word::code));
    c.set("guard", judged.guard());
    judged.low().map(Torque::parse).ifPresent(t -> limit(c, "low", t));
    judged.high().map(Torque::parse).ifPresent(t -> limit(c, "high", t));
    c.set("text", judged.text());
  }

  /** A number and its unit apart, so that a spreadsheet can reckon with the number. */
  private static void limit(Cells c, String column, Torque limit) {
    c.set(column, limit.digits().text()).set(column + "unit", limit.unit().symbol());
  }

  /** Cells being filled. */
  static final class Cells {
    private final String[] cells = new String[COLUMNS.size()];

    Cells() {
      Arrays.fill(cells, "");
    }

    Cells set(String column, String text) {
      cells[PLACES.get(column)] = text;
      return this;
    }

    Cells set(String column, Optional<String> text) {
      return set(column, text.orElse(""));
    }

    String get(String column) {
      return cells[PLACES.get(column)];
    }

    List<String> inOrder() {
      return List.of(cells);
    }
  }
}
