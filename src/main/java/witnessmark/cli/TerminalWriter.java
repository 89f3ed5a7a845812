package witnessmark.cli;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedWriter;
import java.io.FilterWriter;
import java.io.IOException;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.Writer;
import witnessmark.torque.Visible;

/**
 * Where answers and messages are printed: characters that a terminal would obey are written out, as
 * {@code \\u001B}, except line feeds and tabs. What is on record may have come from any wire.
 */
final class TerminalWriter extends PrintWriter {
  private final PrintWriter exact;

  private TerminalWriter(PrintWriter exact) {
    super(new Visibly(exact), true);
    this.exact = exact;
  }

  static TerminalWriter to(PrintStream stream) {
    return over(new PrintWriter(new BufferedWriter(new OutputStreamWriter(stream, UTF_8)), false));
  }

  static TerminalWriter over(PrintWriter exact) {
    return new TerminalWriter(exact);
  }

  /** For what programs read as it is: no character is exchanged. */
  static PrintWriter exact(PrintWriter out) {
    return out instanceof TerminalWriter t ? t.exact : out;
  }

  /** Writes hidden characters out. */
  private static final class Visibly extends FilterWriter {
    Visibly(Writer out) {
      super(out);
    }

    @Override
    public void write(int c) throws IOException {
      write(new char[] {(char) c}, 0, 1);
    }

    @Override
    public void write(char[] text, int from, int length) throws IOException {
      write(new String(text, from, length), 0, length);
    }

    @Override
    public void write(String text, int from, int length) throws IOException {
      int begun = from;
      for (int i = from; i < from + length; i++) {
        if (stays(text.charAt(i))) {
          continue;
        }
        int end = i + Character.charCount(text.codePointAt(i));
        out.write(text, begun, i - begun);
        out.write(Visible.of(text.substring(i, end)));
        begun = end;
        i = end - 1;
      }
      out.write(text, begun, from + length - begun);
    }

    private static boolean stays(char c) {
      return c >= ' ' && c <= '~' || c == '\n' || c == '\t';
    }
  }
}
