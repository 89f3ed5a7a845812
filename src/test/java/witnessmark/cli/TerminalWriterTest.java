package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class TerminalWriterTest {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private final TerminalWriter out = TerminalWriter.to(new PrintStream(bytes, true));

  private String written() {
    out.flush();
    return bytes.toString(java.nio.charset.Charset.defaultCharset());
  }

  @Test
  void whatATerminalWouldObeyIsWrittenOutHoweverItIsPrinted() {
    out.println("a\u001b[31mb");
    out.print('\u001b');
    out.write("c\rd\u0007".toCharArray());
    out.printf("%s%n", "e\u007ff");
    assertThat(written()).isEqualTo("a\\u001B[31mb\n\\u001Bc\\u000Dd\\u0007e\\u007Ff\n");
  }

  @Test
  void linesAndTabsStay() {
    out.print("one\ntwo\tthree\n");
    assertThat(written()).isEqualTo("one\ntwo\tthree\n");
  }

  @Test
  void tablesForProgramsAreExactAndInOrder() {
    out.print("head\u001b\n");
    TerminalWriter.exact(out).print("cell\u001b\n");
    assertThat(written()).isEqualTo("head\\u001B\ncell\u001b\n");
    PrintWriter other = new PrintWriter(new StringWriter());
    assertThat(TerminalWriter.exact(other)).isSameAs(other);
  }
}
