package wrenchsim.truth;

import java.io.BufferedWriter;
import java.io.Closeable;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Where happenings are told: a file of JSON Lines, standard output, either or both. */
public final class Truth implements Closeable {

  /** How standard output tells of a happening. */
  public enum Tone {
    SENTENCES,
    JSON,
    SILENT
  }

  private final Optional<BufferedWriter> file;
  private final PrintStream out;
  private final Tone tone;
  private long told;

  /**
   * Begins; an existing truth file is replaced, for it tells of one run.
   *
   * @throws IOException when the file cannot be written
   */
  public Truth(Optional<Path> path, PrintStream out, Tone tone) throws IOException {
    this.file =
        path.isPresent() ? Optional.of(Files.newBufferedWriter(path.get())) : Optional.empty();
    this.out = out;
    this.tone = tone;
  }

  /**
   * Tells of a happening, before anything of it goes over a wire, so that a run cut short has not
   * sent what its truth file does not know.
   */
  public synchronized void tell(Happening happening) throws IOException {
    String json = happening.json(++told);
    if (file.isPresent()) {
      file.get().write(json + "\n");
      file.get().flush();
    }
    if (tone != Tone.SILENT) {
      out.println(tone == Tone.JSON ? json : happening.sentence());
      out.flush();
    }
  }

  @Override
  public synchronized void close() throws IOException {
    if (file.isPresent()) {
      file.get().close();
    }
  }
}
