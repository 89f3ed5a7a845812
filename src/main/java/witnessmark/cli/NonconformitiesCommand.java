package witnessmark.cli;

import java.io.PrintWriter;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.Json;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;
import witnessmark.entry.Role;
import witnessmark.nonconformity.Nonconformities;
import witnessmark.nonconformity.Nonconformity;
import witnessmark.nonconformity.Nonconformity.Decision;
import witnessmark.nonconformity.Nonconformity.State;
import witnessmark.report.Table;
import witnessmark.torque.Verdict;

/** Lists nonconformities. */
@Command(
    name = "nonconformities",
    mixinStandardHelpOptions = true,
    description = {
      "List fasteners that did not conform: what is open, for how long, and who decided what.",
      "Exit status 1 when one is open."
    },
    footer = {
      "",
      "Example:  witnessmark nonconformities --open",
      "          witnessmark nonconformities --unit ATR-26-0147"
    })
final class NonconformitiesCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--open", description = "Only those that nobody has decided yet.")
  private boolean open;

  @Option(names = "--unit", description = "Only those of a unit.")
  private String unit;

  @Mixin private DataOption data;
  @Mixin private JsonOption json;

  @Override
  public Integer call() {
    if (unit != null) {
      Registered.unit(spec, data, unit);
    }
    Instant now = Moments.now();
    List<Nonconformity> all =
        data.reading(Nonconformities::in).stream()
            .filter(n -> unit == null || unit.equals(n.unit()))
            .filter(n -> !open || n.state() == State.OPEN)
            .toList();
    PrintWriter out = spec.commandLine().getOut();
    if (json.wanted()) {
      json.print(out, all.stream().map(n -> object(n, now)).toList());
    } else if (all.isEmpty()) {
      out.println(
          (open ? "No nonconformity is open" : "No nonconformity is on record")
              + (unit == null ? "." : " of unit " + unit + "."));
    } else {
      out.print(table(all, now));
    }
    out.flush();
    return all.stream().anyMatch(n -> n.state() == State.OPEN) ? Exit.NO : Exit.YES;
  }

  private static Table table(List<Nonconformity> all, Instant now) {
    Table table = new Table("ENTRY", "UNIT", "JOB", "FASTENER", "CRITICALITY", "WHAT", "AGE", "");
    for (Nonconformity n : all) {
      table.add(
          Long.toString(n.entry()),
          n.unit(),
          n.job(),
          n.fastener(),
          n.criticality().code(),
          what(n),
          age(n.age(now)),
          Stream.concat(
                  Stream.of(state(n)), n.decisions().stream().map(NonconformitiesCommand::decision))
              .collect(Collectors.joining("; ")));
    }
    return table;
  }

  private static String what(Nonconformity n) {
    return n.verdict().map(Verdict::code).orElse("loosened, single use");
  }

  private static String state(Nonconformity n) {
    return switch (n.state()) {
      case OPEN -> "OPEN: dispose " + n.job() + " " + n.fastener();
      case TO_BE_DONE -> "decided, to be tightened anew";
      case SETTLED -> "settled";
      case LEFT_OPEN -> "left open: the job was abandoned";
    };
  }

  private static String decision(Decision decision) {
    Entry.Disposed d = decision.disposed();
    return d.disposition().code()
        + d.concession().map(c -> " under concession " + c).orElse("")
        + " by "
        + d.by()
        + d.role().map(r -> " as " + r.code()).orElse("")
        + " (entry "
        + decision.n()
        + "): "
        + d.because();
  }

  /** The largest unit that says something. */
  private static String age(Duration age) {
    if (age.toDays() > 0) {
      return age.toDays() + " d";
    }
    return age.toHours() > 0 ? age.toHours() + " h" : Math.max(0, age.toMinutes()) + " min";
  }

  private static Object object(Nonconformity n, Instant now) {
    return Json.object(
        "entry", n.entry(),
        "since", Moments.text(n.since()),
        "unit", n.unit(),
        "job", n.job(),
        "fastener", n.fastener(),
        "criticality", n.criticality().code(),
        "verdict", n.verdict().map(Verdict::code).orElse(null),
        "state", n.state().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'),
        "ageSeconds", n.age(now).toSeconds(),
        "decisions", n.decisions().stream().map(NonconformitiesCommand::object).toList());
  }

  private static Object object(Decision decision) {
    Entry.Disposed d = decision.disposed();
    return Json.object(
        "entry", decision.n(),
        "at", Moments.text(d.at()),
        "disposition", d.disposition().code(),
        "by", d.by(),
        "role", d.role().map(Role::code).orElse(null),
        "concession", d.concession().orElse(null),
        "because", d.because());
  }
}
