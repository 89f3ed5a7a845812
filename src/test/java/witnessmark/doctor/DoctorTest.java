package witnessmark.doctor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DoctorTest {
  private static final Path DATA = Path.of("data");

  @Test
  void whoHoldsTheLockIsReadFromTheKernelsList() {
    List<String> locks =
        List.of(
            "1: FLOCK  ADVISORY  WRITE 77 08:02:7301 0 EOF",
            "1: -> POSIX  ADVISORY  WRITE 99 08:02:7301 0 EOF",
            "2: POSIX  ADVISORY  READ 78 08:02:7301 0 EOF",
            "3: POSIX  ADVISORY  WRITE 812 08:02:17301 0 EOF",
            "4: POSIX  ADVISORY  WRITE 813 08:02:7301 0 EOF");
    assertThat(Running.holder(locks, 7301)).isEqualTo(OptionalLong.of(813));
    assertThat(Running.holder(locks, 17301)).isEqualTo(OptionalLong.of(812));
    assertThat(Running.holder(locks, 1)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"nfs4,BAD", "cifs,BAD", "fuse.sshfs,BAD", "tmpfs,WARN"})
  void aDiskThatIsNotSafeIsNamed(String type, Mark mark) {
    assertThat(Disk.kind(DATA, type))
        .singleElement()
        .satisfies(f -> assertThat(f.mark()).isEqualTo(mark))
        .satisfies(f -> assertThat(f.found()).contains(type));
  }

  @Test
  void aDiskOfThisComputerIsNothingToSpeakOf() {
    assertThat(Disk.kind(DATA, "ext4")).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"0,BAD", "52428799,BAD", "52428800,WARN", "1073741823,WARN", "1073741824,GOOD"})
  void theRoomOnTheDiskIsJudged(long free, Mark mark) {
    assertThat(Disk.room(DATA, free).mark()).isEqualTo(mark);
  }

  @ParameterizedTest
  @CsvSource({"-3600,GOOD", "0,GOOD", "2,GOOD", "3,BAD", "86400,BAD"})
  void aClockBeforeTheNewestEntryIsWrong(long ahead, Mark mark) {
    Instant now = Instant.parse("2026-11-26T10:00:00Z");
    assertThat(Clock.order(now.plusSeconds(ahead), now).mark()).isEqualTo(mark);
  }

  @Test
  void littleHeapIsToldWithWhatToDo() {
    assertThat(Heap.look("17.0.21", 64L << 20))
        .singleElement()
        .isEqualTo(
            Finding.warn(
                "java",
                "Java 17.0.21, at most 64 MiB of heap; that is little for a long log",
                "Start it with: java -Xmx256m"));
  }

  @Test
  void whatIsBadAlwaysSaysWhatToDo() {
    assertThatThrownBy(() -> new Finding("key", Mark.BAD, "gone", Optional.empty()))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void aFindingStaysOnItsLine() {
    assertThat(Finding.good("broker", "a\n\u001b[31m").found()).isEqualTo("a\\u000A\\u001B[31m");
  }
}
