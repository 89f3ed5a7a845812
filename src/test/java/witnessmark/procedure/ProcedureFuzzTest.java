package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import witnessmark.toml.FaultsException;

/**
 * Set {@code -Dfuzz.count} for more than the usual number of texts, {@code -Dfuzz.seed} for others.
 */
class ProcedureFuzzTest {
  private static final int COUNT = Integer.getInteger("fuzz.count", 5_000);
  private static final long SEED = Long.getLong("fuzz.seed", 42);
  private static final String MARKS = "[]{}=,.\"'#\n\r\t\\ :/%-+0159aeNm\u0000é\uD83D\uDE00\uD800";
  private static final List<String> PIECES =
      List.of(
          "[[step]]",
          "[[step.pass]]",
          "[step]",
          "\"\"\"",
          "'''",
          "= []",
          "= {}",
          "= [[1],[2]]",
          "= 1979-05-27T07:32:00Z",
          "= 0x1F",
          "= inf",
          "= 1e400",
          "= true",
          "\\uD800",
          "after = [\"pivot\"]",
          "after = []",
          "\"-1 N.m\"",
          "\"1e-99 N.m\"",
          "\"99999999999999999999 %\"",
          "fasteners = 9223372036854775807",
          "a.b.c = 1",
          "\"\" = 1");

  private static String mutated(String text, Random random) {
    StringBuilder s = new StringBuilder(text);
    for (int i = 1 + random.nextInt(4); i > 0; i--) {
      int at = random.nextInt(s.length());
      switch (random.nextInt(6)) {
        case 0 -> s.deleteCharAt(at);
        case 1 -> s.insert(at, MARKS.charAt(random.nextInt(MARKS.length())));
        case 2 -> s.setCharAt(at, MARKS.charAt(random.nextInt(MARKS.length())));
        case 3 -> s.insert(at, PIECES.get(random.nextInt(PIECES.size())));
        case 4 -> swapLines(s, random);
        default -> s.delete(at, Math.min(s.length(), at + random.nextInt(80)));
      }
    }
    return s.toString();
  }

  /** Writes one line over another: that keeps more of the text TOML than single characters do. */
  private static void swapLines(StringBuilder s, Random random) {
    String[] lines = s.toString().split("\n", -1);
    lines[random.nextInt(lines.length)] = lines[random.nextInt(lines.length)];
    s.setLength(0);
    s.append(String.join("\n", lines));
  }

  @Test
  void anyChangeOfTheDemoProcedureParsesOrListsItsFaults() throws IOException {
    String demo = Files.readString(Path.of("demo-data/RAM-210.toml"));
    Random random = new Random(SEED);
    int parsed = 0;
    int beyondToml = 0;
    for (int i = 0; i < COUNT; i++) {
      String text = mutated(demo, random);
      try {
        Procedure procedure = ProcedureFile.parse("p.toml", text);
        Sanity.findings(procedure);
        parsed++;
      } catch (FaultsException e) {
        assertThat(e.faults()).as(where(i)).isNotEmpty();
        assertThat(e.getMessage().lines()).as(where(i)).hasSameSizeAs(e.faults());
        beyondToml += e.getMessage().contains("the file must be TOML") ? 0 : 1;
      } catch (RuntimeException | StackOverflowError e) {
        fail(where(i) + " on:\n" + text, e);
      }
    }
    assertThat(parsed).as("texts that still parse").isGreaterThan(COUNT / 50);
    assertThat(beyondToml).as("texts that are TOML and faulty").isGreaterThan(COUNT / 20);
  }

  @Test
  void textsMadeToExhaustTheReaderAreRefusedSoon() {
    int size = 1 << 20;
    List<String> texts =
        List.of(
            "a=" + "[".repeat(size - 2),
            "a=" + "{a=".repeat(size / 3 - 1),
            "a" + ".a".repeat(size / 2 - 2) + "=1",
            "a=[" + "1,".repeat(size / 2 - 3) + "]",
            "a=" + "1".repeat(size - 2),
            "a=\"" + "x".repeat(size - 4) + "\"",
            "a=1\n".repeat(size / 4),
            "[[step]]\n".repeat(size / 9),
            "\"".repeat(size),
            "\u0000".repeat(size),
            "[".repeat(size),
            "=\n".repeat(size / 2),
            "\n".repeat(size));
    for (String text : texts) {
      long began = System.nanoTime();
      assertThat(faulty(text)).isTrue();
      Duration took = Duration.ofNanos(System.nanoTime() - began);
      // a whole second is what a person may wait; ten leaves room for a busy build machine
      assertThat(took).as(text.substring(0, 20)).isLessThan(Duration.ofSeconds(10));
    }
  }

  private static boolean faulty(String text) {
    try {
      ProcedureFile.parse("p.toml", text);
      return false;
    } catch (FaultsException e) {
      return true;
    }
  }

  private static String where(int i) {
    return "seed " + SEED + ", text " + i;
  }
}
