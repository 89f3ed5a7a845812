package witnessmark.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.record.Attempt;
import witnessmark.record.JobRecord;
import witnessmark.record.PassRecord;

/** Every pass of every fastener on a line, under what was asked of its group. */
final class PassLines {
  private static final String[] HEADS = {
    "FASTENER", "MEASURED", "DEGREES", "VERDICT", "WRENCH", "BY", "TIME", "ENTRY"
  };
  private static final int COLUMNS = HEADS.length;

  private PassLines() {}

  static List<String> of(JobRecord job) {
    boolean oneDay =
        job.passes().stream()
                .flatMap(p -> p.attempts().stream())
                .map(a -> Phrases.day(a.taken().moment()))
                .distinct()
                .count()
            <= 1;
    List<Object> rows = new ArrayList<>();
    rows.add(HEADS);
    PassRecord before = null;
    for (PassRecord pass : job.passes()) {
      if (before == null || before.step() != pass.step() || before.pass() != pass.pass()) {
        rows.add(heading(pass));
      }
      before = pass;
      Optional<Attempt> shown = pass.shown();
      String state = RecordText.state(pass);
      rows.add(shown.map(a -> row("", pass, a, state, oneDay)).orElseGet(() -> none(pass)));
      pass.attempts().stream()
          .filter(a -> a != shown.orElse(null))
          .forEach(a -> rows.add(row("  also", pass, a, a.undone() ? "undone" : "", oneDay)));
    }
    List<String> lines = laid(rows);
    Remarks.signs(job).forEach(s -> lines.addAll(Paragraph.of("    " + s, 100, "      ")));
    return lines;
  }

  private static String heading(PassRecord pass) {
    return "  "
        + pass.step().id()
        + ", "
        + pass.step().title()
        + ", "
        + pass.pass().name()
        + " pass: "
        + Phrases.asked(pass.pass())
        + "; "
        + Phrases.terms(pass.step());
  }

  private static String[] none(PassRecord pass) {
    return new String[] {pass.fastener(), "-", "", RecordText.state(pass), "", "", "", ""};
  }

  private static String[] row(
      String also, PassRecord pass, Attempt a, String state, boolean oneDay) {
    String time = Phrases.time(a.taken().moment());
    return new String[] {
      also.isEmpty() ? Remarks.fastener(a) : also + (a.byCount() ? " *" : ""),
      Remarks.torque(a, pass.pass().band()),
      Phrases.angle(a),
      Phrases.outcome(a) + (state.isEmpty() ? "" : ", " + state),
      a.taken().event().wrench(),
      a.operator().orElse("-"),
      oneDay ? time.substring(11) : time,
      Long.toString(a.entry())
    };
  }

  private static List<String> laid(List<Object> rows) {
    int[] widths = new int[COLUMNS];
    for (Object row : rows) {
      if (row instanceof String[] cells) {
        for (int i = 0; i < COLUMNS; i++) {
          widths[i] = Math.max(widths[i], cells[i].length());
        }
      }
    }
    List<String> lines = new ArrayList<>();
    for (Object row : rows) {
      if (row instanceof String[] cells) {
        StringBuilder line = new StringBuilder("    ");
        for (int i = 0; i < COLUMNS; i++) {
          line.append(cells[i]).append(" ".repeat(widths[i] - cells[i].length() + 2));
        }
        lines.add(line.toString().stripTrailing());
      } else {
        lines.addAll(Paragraph.of((String) row, 100, "      "));
      }
    }
    return lines;
  }
}
