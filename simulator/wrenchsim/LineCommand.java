package wrenchsim;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import wrenchsim.line.Line;
import wrenchsim.line.LineSender;
import wrenchsim.line.RealPort;
import wrenchsim.line.VirtualLine;
import wrenchsim.truth.Truth;
import wrenchsim.wire.JsonLine;
import wrenchsim.wire.LinkException;

/** The open loop over a serial line: numbered frames, until every one is answered. */
@Command(
    name = "line",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Sends numbered frames on a serial line until every one is answered.",
      "What stays unanswered goes out again after two seconds."
    },
    footer = {"", "Example:", "  ${COMMAND-FULL-NAME} --virtual tw-0502 --count 100"})
final class LineCommand implements Callable<Integer> {
  // A wrench's memory in this simulator; also what keeps a slow bridge from being flooded.
  private static final int MOST_UNANSWERED = 64;

  @Spec private CommandSpec spec;

  @ArgGroup(multiplicity = "1")
  private Where where;

  /** One of the two kinds of line. */
  static final class Where {
    @Option(
        names = "--port",
        paramLabel = "PATH",
        description = "A serial port, e.g. /dev/ttyUSB0.")
    private String port;

    @Option(
        names = "--virtual",
        paramLabel = "LINK",
        description = "Make a pseudo-terminal at this path (needs socat: apt install socat).")
    private Path virtual;
  }

  @Option(
      names = "--baud",
      paramLabel = "B",
      defaultValue = "115200",
      description = "Bits a second of a real port (default: ${DEFAULT-VALUE}).")
  private int baud;

  @Mixin private Series series;

  @Option(
      names = "--wrench",
      paramLabel = "WRENCH",
      defaultValue = "TW-0417",
      converter = Converters.OfWrench.class,
      description = "The wrench, as in 'shop --help' (default: ${DEFAULT-VALUE}).")
  private WrenchOption wrench;

  @Option(
      names = "--give-up",
      paramLabel = "SECONDS",
      defaultValue = "60",
      description = "How long to wait without any answer (default: ${DEFAULT-VALUE}).")
  private int giveUp;

  @Mixin private RunOptions run;

  @Override
  public Integer call() throws IOException {
    series.refuseWrong(wrench);
    Duration patience = Duration.ofSeconds(Math.max(1, giveUp));
    try (Truth truth = run.tellingFile();
        LineSender sender = new LineSender(line(), wrench.spec().serial(), Main::warn)) {
      sender.open();
      long began = System.nanoTime();
      boolean answered = true;
      try {
        series.send(
            wrench, run, truth, sender, () -> awaitRoom(sender, MOST_UNANSWERED - 1, patience));
        awaitRoom(sender, 0, patience);
      } catch (Unanswered e) {
        Main.warn(e.getMessage());
        answered = false;
      }
      System.out.println(summary((System.nanoTime() - began) / 1e9, sender));
      return answered ? 0 : Main.UNFINISHED;
    }
  }

  /** The other side is there, or may come, but does not answer. */
  private static final class Unanswered extends IOException {
    private static final long serialVersionUID = 1L;

    Unanswered(String message) {
      super(message);
    }
  }

  private static void awaitRoom(LineSender sender, int open, Duration patience) throws Unanswered {
    if (!sender.awaitAtMost(open, patience)) {
      throw new Unanswered(
          "no answer for %d s: is a bridge reading the line? %d frames are unanswered"
              .formatted(patience.toSeconds(), sender.unanswered()));
    }
  }

  private Line line() throws LinkException {
    if (where.port != null) {
      return new RealPort(where.port, baud);
    }
    try {
      return new VirtualLine(where.virtual);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }

  private String summary(double seconds, LineSender sender) {
    String words =
        sender.words().entrySet().stream()
            .map(e -> e.getKey() + " " + e.getValue())
            .collect(Collectors.joining(", "));
    String took = Series.digits(seconds);
    int answered = sender.words().values().stream().mapToInt(Integer::intValue).sum();
    if (run.json) {
      return new JsonLine()
          .put("command", "line")
          .put("wrench", wrench.spec().serial())
          .put("first", series.first)
          .put("last", series.last())
          .put("answered", answered)
          .put("sentagain", sender.sentAgain())
          .put("words", words)
          .put("seconds", took)
          .toString();
    }
    return "line: %d of %d frames of %s answered in %s s (%s), %d sent again"
        .formatted(answered, series.count, wrench.spec().serial(), took, words, sender.sentAgain());
  }
}
