package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import witnessmark.cli.answer.TraceText;
import witnessmark.entry.EntryJson;
import witnessmark.entry.Moments;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Reading.JobRow;
import witnessmark.ledger.Reading.Query;
import witnessmark.ledger.Stored;
import witnessmark.report.Assembly;
import witnessmark.report.Csv;
import witnessmark.report.Kinds;
import witnessmark.report.Line;
import witnessmark.torque.Verdict;

/** Pulls records. */
@Command(
    name = "trace",
    mixinStandardHelpOptions = true,
    description = {
      "Pull records by unit, job, procedure, fastener, wrench, operator, station, period or verdict.",
      "Exit status 1 when nothing matches."
    },
    footer = {
      "",
      "Example:  witnessmark trace --unit ATR-26-0147",
      "          witnessmark trace --unit ATR-26-0147 --record",
      "          witnessmark trace --unit ATR-26-0147 --certificate ATR-26-0147.pdf",
      "          witnessmark trace --wrench TW-0417 --from 2026-11-01 --csv > november.csv"
    })
final class TraceCommand implements Callable<Integer> {
  private static final List<String> VERDICTS =
      Arrays.stream(Verdict.values()).map(Verdict::code).toList();

  @Spec private CommandSpec spec;

  @Option(names = "--unit", description = "Its number, e.g. ATR-26-0147.")
  private String unit;

  @Option(names = "--job", description = "Its name, e.g. J-6.")
  private String job;

  @Option(names = "--procedure", description = "Its id, e.g. RAM-210.")
  private String procedure;

  @Option(names = "--revision", description = "Of the procedure.")
  private String revision;

  @Option(names = "--fastener", description = "e.g. carrier-left/3.")
  private String fastener;

  @Option(names = "--wrench", description = "Its serial number.")
  private String wrench;

  @Option(names = "--operator", description = "A badge.")
  private String operator;

  @Option(names = "--station", description = "e.g. bench-1.")
  private String station;

  @Option(names = "--kind", description = "The entry's kind, e.g. torque, disposed, refused.")
  private String kind;

  @Option(names = "--verdict", description = "e.g. over-torque.")
  private String verdict;

  @Option(names = "--from", description = "Date or RFC 3339 time, inclusive; a date is UTC.")
  private String from;

  @Option(names = "--to", description = "Date (inclusive) or RFC 3339 time (exclusive).")
  private String to;

  @ArgGroup private Form form = new Form();
  @Mixin private RecordOption record;
  @Mixin private CertificateOption certificate;
  @Mixin private DataOption data;

  /** How to print; a table when nothing is said. */
  static final class Form {
    @Option(names = "--csv", description = "Print comma-separated values (RFC 4180).")
    private boolean csv;

    @Option(
        names = {"--jsonl", "--json"},
        description =
            "Print one JSON object a line: the number and the entry itself; "
                + "with --record, the record as one object.")
    private boolean jsonl;
  }

  @Override
  public Integer call() {
    Query query = Given.valid(spec, this::query);
    PrintWriter out = spec.commandLine().getOut();
    if (certificate.wanted()) {
      return certificate.write(out, spec.commandLine().getErr(), data, query.unit(), query.job());
    }
    if (record.wanted()) {
      return record.print(
          out, spec.commandLine().getErr(), data, query.unit(), query.job(), form.jsonl);
    }
    PrintWriter lines = form.csv ? TerminalWriter.exact(out) : out;
    long found = data.reading(reading -> print(lines, reading, query));
    lines.flush();
    if (found == 0) {
      spec.commandLine().getErr().println("Nothing on record matches.");
      data.reading(r -> Registered.strangers(r, query))
          .forEach(spec.commandLine().getErr()::println);
      return Exit.NO;
    }
    return Exit.YES;
  }

  private Query query() {
    certificate.check();
    if (record.wanted() || certificate.wanted()) {
      return recordQuery();
    }
    Optional<String> begin = Optional.ofNullable(from).map(t -> Moments.text(Day.begin(t)));
    Optional<String> end = Optional.ofNullable(to).map(t -> Moments.text(Day.end(t)));
    if (begin.isPresent() && end.isPresent() && begin.get().compareTo(end.get()) >= 0) {
      throw new IllegalArgumentException(
          "--from " + from + " is not before --to " + to + ": nothing lies between; exchange them");
    }
    return new Query(
        Optional.ofNullable(unit),
        Optional.ofNullable(job),
        Optional.ofNullable(procedure),
        Optional.ofNullable(revision),
        Optional.ofNullable(fastener),
        Optional.ofNullable(wrench),
        Optional.ofNullable(operator),
        Optional.ofNullable(station),
        Optional.ofNullable(kind).map(k -> Given.oneOf("kind", k, Kinds.all())),
        Optional.ofNullable(verdict).map(v -> Given.oneOf("verdict", v, VERDICTS)),
        begin,
        end);
  }

  /** Prints what matches, one chunk after the other; the lines of a chunk are made at once. */
  private long print(PrintWriter out, Reading reading, Query query) {
    AtomicLong found = new AtomicLong();
    Map<String, Assembly> jobs =
        form.csv
            ? reading.jobs(Optional.empty(), Optional.empty(), false).stream()
                .collect(
                    Collectors.toMap(
                        JobRow::job, j -> new Assembly(j.unit(), j.procedure(), j.revision())))
            : Map.of();
    try (Progress progress = Progress.whilePrinting("reading", reading.size())) {
      reading.chunks(
          query,
          chunk -> {
            if (found.getAndAdd(chunk.size()) == 0) {
              out.print(head());
            }
            chunk.parallelStream().map(s -> line(s, jobs)).forEachOrdered(out::print);
            progress.accept(chunk.get(chunk.size() - 1).n());
          });
    }
    return found.get();
  }

  private String head() {
    return form.csv ? Csv.row(Line.COLUMNS) : form.jsonl ? "" : TraceText.HEAD;
  }

  /** A record is of whole jobs, so that nothing else can narrow it. */
  private Query recordQuery() {
    boolean narrowed =
        Stream.of(procedure, revision, fastener, wrench, operator, station, kind, verdict, from, to)
            .anyMatch(Objects::nonNull);
    boolean both = record.wanted() && certificate.wanted();
    boolean printed = form.csv || (form.jsonl && certificate.wanted());
    if (narrowed || both || printed || (unit == null && job == null)) {
      throw new IllegalArgumentException(
          "--record and --certificate are of a whole unit or job: name it with --unit or --job, and"
              + " nothing else but --json for the record");
    }
    Optional<String> any = Optional.empty();
    return new Query(
        Optional.ofNullable(unit),
        Optional.ofNullable(job),
        any,
        any,
        any,
        any,
        any,
        any,
        any,
        any,
        any);
  }

  private String line(Stored stored, Map<String, Assembly> jobs) {
    if (form.jsonl) {
      return "{\"n\":"
          + stored.n()
          + ",\"entry\":"
          + new String(stored.bytes(), StandardCharsets.UTF_8)
          + "}\n";
    }
    Line line = Line.of(stored.n(), EntryJson.read(stored.bytes()), jobs);
    return form.csv ? Csv.row(line.cells()) : TraceText.of(line);
  }
}
