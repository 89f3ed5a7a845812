package witnessmark.cli;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import witnessmark.job.Released;
import witnessmark.job.Shop;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Reading.Query;
import witnessmark.pipeline.Replay;
import witnessmark.procedure.Step;
import witnessmark.toml.Nearest;

/** Whether a name that was typed is one on record, so that a slip is not taken for an answer. */
final class Registered {
  private Registered() {}

  /**
   * @throws ParameterException when no such wrench is enrolled
   */
  static void wrench(CommandSpec spec, DataOption data, String serial) {
    known("wrench", "enrolled", serial, data.shop().wrenches().keySet())
        .ifPresent(refuse(spec, " See: wrench list"));
  }

  /**
   * @throws ParameterException when no job was ever of that unit
   */
  static void unit(CommandSpec spec, DataOption data, String unit) {
    data.reading(r -> known("unit", "on record", unit, jobs(r, JobRow::unit)))
        .ifPresent(refuse(spec, " See: trace --kind job-opened"));
  }

  private static Consumer<String> refuse(CommandSpec spec, String where) {
    return said -> {
      throw new ParameterException(spec.commandLine(), said + where);
    };
  }

  /** Which of the names in a query are nowhere on record: sentences. */
  static List<String> strangers(Reading reading, Query query) {
    Shop shop = Replay.of(reading.live());
    List<String> said = new ArrayList<>();
    query
        .unit()
        .flatMap(u -> known("unit", "on record", u, jobs(reading, JobRow::unit)))
        .ifPresent(said::add);
    query
        .job()
        .flatMap(j -> known("job", "on record", j, jobs(reading, JobRow::job)))
        .ifPresent(said::add);
    query.procedure().flatMap(p -> procedure(shop, p)).ifPresent(said::add);
    query
        .wrench()
        .flatMap(w -> known("wrench", "enrolled", w, shop.wrenches().keySet()))
        .ifPresent(said::add);
    query
        .operator()
        .flatMap(o -> known("badge", "enrolled", o, shop.operators().keySet()))
        .ifPresent(said::add);
    query
        .station()
        .flatMap(s -> known("station", "that a job was at", s, reading.stations()))
        .ifPresent(said::add);
    query.fastener().flatMap(f -> step(shop, f)).ifPresent(said::add);
    return said;
  }

  private static Optional<String> procedure(Shop shop, String id) {
    return known("procedure", "released", id, ids(shop));
  }

  /** Of a fastener such as {@code carrier-left/3}, or of a group. */
  private static Optional<String> step(Shop shop, String fastener) {
    String step = fastener.replaceFirst("/.*", "");
    List<String> steps =
        shop.procedures().stream()
            .map(Released::parse)
            .flatMap(p -> p.steps().stream())
            .map(Step::id)
            .distinct()
            .toList();
    return known("step", "in a released procedure", step, steps);
  }

  private static List<String> ids(Shop shop) {
    return shop.procedures().stream().map(Released::procedure).distinct().toList();
  }

  private static List<String> jobs(Reading reading, Function<JobRow, String> of) {
    return reading.jobs(Optional.empty(), Optional.empty(), false).stream()
        .map(of)
        .distinct()
        .toList();
  }

  private static Optional<String> known(
      String what, String where, String name, Collection<String> all) {
    if (all.contains(name)) {
      return Optional.empty();
    }
    String meant = Nearest.of(name, all).map(n -> "; did you mean \"" + n + "\"?").orElse(".");
    return Optional.of("No " + what + " \"" + name + "\" is " + where + meant);
  }
}
