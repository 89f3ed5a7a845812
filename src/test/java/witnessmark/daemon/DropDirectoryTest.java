package witnessmark.daemon;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DropDirectoryTest {
  @TempDir private Path directory;

  private static String note(long size, String root) {
    return "witnessmark.local/log/0123456789abcdef\n" + size + "\n" + root + "\n\n\u2014 x y\n";
  }

  private List<String> names() throws IOException {
    try (Stream<Path> all = Files.list(directory)) {
      return all.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void eachNewCheckpointIsAFileOfItsOwnAndTheSameOneIsNotWrittenTwice() throws IOException {
    DropDirectory drops = new DropDirectory(directory);
    assertThat(drops.put(note(9, "a"))).contains(directory.resolve("checkpoint-000000000009.txt"));
    assertThat(drops.put(note(9, "a"))).isEmpty();
    drops.put(note(140, "b"));
    assertThat(names())
        .containsExactly("checkpoint-000000000009.txt", "checkpoint-000000000140.txt");
    assertThat(directory.resolve("checkpoint-000000000140.txt")).hasContent(note(140, "b"));
  }

  @Test
  void noSmallerOneComesAfterALargerOneAndNoneIsReplaced() throws IOException {
    DropDirectory drops = new DropDirectory(directory);
    drops.put(note(140, "b"));
    assertThatThrownBy(() -> drops.put(note(139, "b")))
        .isInstanceOf(DropDirectory.ContradictionException.class)
        .hasMessage(
            "The log has 139 entries, but "
                + directory.resolve("checkpoint-000000000140.txt")
                + " signs 140: an older or another log was put in its place. Run: witnessmark"
                + " ledger verify --since "
                + directory);
    assertThatThrownBy(() -> drops.put(note(140, "c")))
        .isInstanceOf(DropDirectory.ContradictionException.class)
        .hasMessageContaining("signs 140 of another history");
    assertThat(names()).containsExactly("checkpoint-000000000140.txt");
    assertThat(directory.resolve("checkpoint-000000000140.txt")).hasContent(note(140, "b"));
  }

  @Test
  void whatACrashLeftAndFilesOfOthersAreNoCheckpoints() throws IOException {
    Files.writeString(directory.resolve(".checkpoint-000000000009.txt.unfinished"), "half");
    Files.writeString(directory.resolve("notes.txt"), "ours");
    new DropDirectory(directory).put(note(9, "a"));
    assertThat(names()).containsExactly("checkpoint-000000000009.txt", "notes.txt");
  }
}
