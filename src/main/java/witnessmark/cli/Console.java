package witnessmark.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.util.Arrays;
import java.util.Optional;

/**
 * Standard output and standard error: UTF-8 whatever the locale, as checkpoints, CSV and names on
 * record are, and not silent about what did not get through.
 */
final class Console {
  private final Watched answers = new Watched(new FileOutputStream(FileDescriptor.out));
  private final PrintWriter out =
      new PrintWriter(new BufferedWriter(new OutputStreamWriter(answers, UTF_8)), false);
  private final PrintStream err =
      new PrintStream(new FileOutputStream(FileDescriptor.err), true, UTF_8);

  PrintWriter out() {
    return out;
  }

  PrintWriter err() {
    return new PrintWriter(err, true, UTF_8);
  }

  /** Lets what writes to {@code System.out} and {@code System.err} write here. */
  Console everywhere() {
    System.setOut(new PrintStream(answers, true, UTF_8));
    System.setErr(err);
    return this;
  }

  /**
   * What is wrong with the arguments themselves: where the locale cannot carry their characters,
   * Java has put something else in their place, which must not go on record.
   */
  static Optional<String> lost(String... arguments) {
    return Arrays.stream(arguments)
        .filter(a -> a.indexOf('\uFFFD') >= 0)
        .findFirst()
        .map(
            a ->
                "The locale ("
                    + System.getProperty("sun.jnu.encoding")
                    + ") cannot carry the argument \""
                    + a
                    + "\". Run it again with LC_ALL=C.UTF-8 before the command.");
  }

  /** The exit status, given the command's own. */
  int status(int own) {
    out.flush();
    if (answers.failure == null || closed(answers.failure)) {
      return own;
    }
    err.println(
        "What was to be printed did not get through: "
            + answers.failure.getMessage()
            + ". What arrived is cut off.");
    return Exit.SURROUNDINGS;
  }

  /** Whoever reads had enough, such as {@code head}. */
  private static boolean closed(IOException failure) {
    return String.valueOf(failure.getMessage()).contains("Broken pipe");
  }

  /** Remembers the first failure, about which writers keep silent. */
  private static final class Watched extends OutputStream {
    private final OutputStream to;
    private IOException failure;

    Watched(OutputStream to) {
      this.to = to;
    }

    @Override
    public void write(int b) throws IOException {
      write(new byte[] {(byte) b}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int length) throws IOException {
      try {
        to.write(bytes, from, length);
      } catch (IOException e) {
        failure = failure == null ? e : failure;
        throw e;
      }
    }
  }
}
