package wrenchsim;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Optional;
import picocli.CommandLine.Option;
import wrenchsim.truth.Truth;
import wrenchsim.truth.Truth.Tone;

/** The options of every run: what is drawn, when it is, and who is told. */
final class RunOptions {
  @Option(
      names = "--seed",
      paramLabel = "N",
      defaultValue = "1",
      description = "The seed of everything that scatters (default: ${DEFAULT-VALUE}).")
  long seed;

  @Option(
      names = "--clock-start",
      paramLabel = "TIME",
      converter = Converters.OfInstant.class,
      description =
          "Begin a simulated clock at this RFC 3339 time instead of following the computer's; "
              + "with it, runs with the same seed and the same answers give the same truth file, byte for byte.")
  Optional<Instant> clockStart;

  @Option(
      names = "--truth",
      paramLabel = "FILE",
      description = "Write what was really done to this file, one JSON object a line.")
  private Optional<Path> truth;

  @Option(names = "--json", description = "Print JSON lines instead of sentences.")
  boolean json;

  /** The truth, told to the file asked for and to standard output. */
  Truth tellingAll() throws IOException {
    return telling(json ? Tone.JSON : Tone.SENTENCES);
  }

  /** The truth, told to the file asked for only. */
  Truth tellingFile() throws IOException {
    return telling(Tone.SILENT);
  }

  private Truth telling(Tone tone) throws IOException {
    try {
      return new Truth(truth, System.out, tone);
    } catch (IOException e) {
      throw new IOException(
          "the truth file %s cannot be written: %s. Name another with --truth."
              .formatted(truth.orElseThrow(), e),
          e);
    }
  }
}
