package witnessmark.doctor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
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

  @Test
  void anAreaThatFailsDoesNotHideTheOthers() {
    List<Finding> found = new ArrayList<>();
    Doctor doctor = new Doctor(found::add);
    doctor.look(
        "broker shop",
        () -> {
          throw new IllegalArgumentException("port out of range:65536");
        });
    doctor.look("clock", () -> List.of(Finding.good("clock", "It is right.")));
    assertThat(found).extracting(Finding::area).containsExactly("broker shop", "clock");
    assertThat(found.get(0).mark()).isEqualTo(Mark.BAD);
    assertThat(found.get(0).found())
        .isEqualTo(
            "It could not be looked at: java.lang.IllegalArgumentException: port out of"
                + " range:65536.");
  }

  @Test
  void aSentenceEndsInOneMark() {
    assertThat(Finding.sentence("did you mean \"listen\"?")).isEqualTo("Did you mean \"listen\"?");
    assertThat(Finding.sentence("name it once")).isEqualTo("Name it once.");
    assertThat(Finding.sentence("Run it.")).isEqualTo("Run it.");
  }

  @Test
  void whatComesWithItsOwnNextStepGetsNoOther() {
    assertThat(
            Finding.told(
                "ledger",
                "It does not open: ",
                "l.db has format version 2; this program knows up to 1. Use the newer program that"
                    + " wrote it.",
                "another"))
        .isEqualTo(
            Finding.bad(
                "ledger",
                "It does not open: l.db has format version 2; this program knows up to 1.",
                "Use the newer program that wrote it."));
    assertThat(Finding.told("ledger", "It does not open: ", "l.db is not a log.", "another"))
        .isEqualTo(Finding.bad("ledger", "It does not open: l.db is not a log.", "another"));
  }

  private static Health health(String state, String since, long waiting, long notKept) {
    return Health.read(
        ("{\"state\":\""
                + state
                + "\",\"reason\":\"why\",\"since\":\""
                + since
                + "\",\"waiting\":"
                + waiting
                + ",\"notkept\":"
                + notKept
                + "}")
            .getBytes(StandardCharsets.UTF_8));
  }

  private static List<String> atWork(
      OptionalLong daemon, Optional<Health> served, Health retained) {
    return new AtWork("shop-1", daemon, served, Map.of("broker shop", retained))
        .look().stream().map(f -> f.mark() + " " + f.area() + ": " + f.found()).toList();
  }

  @Test
  void whatTheRunningBridgeCountsIsTold() {
    String since = "2026-11-26T10:00:00Z";
    Health it = health("degraded", since, 3, 1);
    assertThat(atWork(OptionalLong.of(1), Optional.of(it), it))
        .containsExactly(
            "WARN bridge: The running bridge says it is degraded: why",
            "WARN bridge: 3 messages were heard and not on record yet.",
            "WARN bridge: 1 message was heard since "
                + since
                + " and lost: there was no room for them, and nobody sends them again.");
  }

  @Test
  void aBridgeOfTheSameNameIsToldApartBySinceWhen() {
    Health ours = health("ok", "2026-11-26T10:00:00Z", 0, 0);
    Health other = health("ok", "2026-11-26T10:00:01Z", 0, 0);
    assertThat(atWork(OptionalLong.of(1), Optional.of(ours), ours))
        .containsExactly("GOOD bridge: The running bridge says that all is well with it.");
    assertThat(atWork(OptionalLong.of(1), Optional.of(ours), other))
        .containsExactly(
            "BAD broker shop: Another bridge of the name \"shop-1\", at work since"
                + " 2026-11-26T10:00:01Z, tells its health there in place of this one's.",
            "GOOD bridge: The running bridge says that all is well with it.");
    assertThat(atWork(OptionalLong.empty(), Optional.empty(), other))
        .singleElement()
        .asString()
        .startsWith("WARN broker shop: A bridge \"shop-1\" says there that it is at work since");
  }

  @Test
  void withoutHttpTheProcessOwnAgeTells() {
    OptionalLong me = OptionalLong.of(ProcessHandle.current().pid());
    Instant started = ProcessHandle.current().info().startInstant().orElseThrow();
    assertThat(atWork(me, Optional.empty(), health("ok", "" + started.plusSeconds(3), 0, 0)))
        .containsExactly("GOOD bridge: The running bridge says that all is well with it.");
    assertThat(atWork(me, Optional.empty(), health("ok", "" + started.minusSeconds(90), 0, 0)))
        .singleElement()
        .asString()
        .startsWith("BAD broker shop: Another bridge of the name");
  }

  @Test
  void theMountPointIsTheTopOfTheDisk() throws IOException {
    assertThat(Disk.mount(Path.of("/proc/self/net"))).isEqualTo(Path.of("/proc"));
    Path root = Path.of("/");
    assertThat(Disk.mount(root)).isEqualTo(root);
    assertThat(Disk.room(Path.of("/proc"), 0).next().orElseThrow())
        .startsWith("See what takes the room: du -xh --max-depth=2 /proc | sort -h | tail.");
  }
}
