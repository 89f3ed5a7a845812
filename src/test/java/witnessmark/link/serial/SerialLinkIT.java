package witnessmark.link.serial;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.PtyPair;
import witnessmark.link.LinkState;

class SerialLinkIT {
  private static final Duration LONG = Duration.ofSeconds(20);

  @TempDir Path directory;
  private final Tape tape = new Tape();
  private final List<SerialLink> links = new ArrayList<>();
  private PtyPair cable;

  @BeforeEach
  void plugIn() {
    cable = PtyPair.plug(directory);
  }

  @AfterEach
  void unplug() {
    links.forEach(SerialLink::close);
    cable.close();
  }

  @Test
  void bytesArriveAsTheyWereSent() {
    SerialLink link = up(cable.bridge().toString(), tape);
    StringBuilder sent = new StringBuilder();
    for (int i = 0; i < 2000; i++) {
      sent.append("W|TW-0417|").append(i).append("\r\n");
    }
    cable.write(sent.toString().getBytes(US_ASCII));
    await().atMost(LONG).until(() -> tape.toString().length() >= sent.length());
    assertThat(tape.toString()).isEqualTo(sent.toString());
    assertThat(link.status().detail()).isEqualTo("listening on " + cable.bridge());
  }

  @Test
  void anAnswerGoesBackToTheWrench() {
    SerialLink link = up(cable.bridge().toString(), tape);
    assertThat(link.send("A|TW-0417|1|in-band\r\n".getBytes(US_ASCII))).isTrue();
    assertThat(cable.read(21, LONG)).asString(US_ASCII).isEqualTo("A|TW-0417|1|in-band\r\n");
  }

  @Test
  void aPulledCableIsNoticedAndOpenedAgainWhenItIsBack() {
    SerialLink link = up(cable.bridge().toString(), tape);
    cable.write("before".getBytes(US_ASCII));
    await().until(() -> tape.toString().equals("before"));
    cable.pull();
    await()
        .untilAsserted(
            () ->
                assertThat(link.status().detail())
                    .isEqualTo("port " + cable.bridge() + " is not plugged in"));
    assertThat(link.status().state()).isEqualTo(LinkState.WAITING);
    assertThat(tape.toString()).isEqualTo("before/");
    assertThat(link.send(new byte[] {1})).isFalse();
    cable.plug();
    await().until(() -> link.status().state() == LinkState.UP);
    cable.write("after".getBytes(US_ASCII));
    await().until(() -> tape.toString().equals("before/after"));
    assertThat(link.send("x".getBytes(US_ASCII))).isTrue();
    assertThat(cable.read(1, LONG)).asString(US_ASCII).isEqualTo("x");
  }

  @Test
  void aCableNamedByItsUsbNumberIsFoundUnderAnotherPath() throws IOException {
    List<FoundPort> plugged = new ArrayList<>();
    plugged.add(new FoundPort(cable.bridge().toString(), "A600XYZ", 0x0403, 0x6001));
    SerialLink link = link("usb-serial:A600XYZ", () -> List.copyOf(plugged), tape, null);
    await().until(() -> link.status().state() == LinkState.UP);
    try (PtyPair elsewhere = PtyPair.plug(Files.createDirectory(directory.resolve("b")))) {
      plugged.set(0, new FoundPort(elsewhere.bridge().toString(), "A600XYZ", 0x0403, 0x6001));
      cable.pull();
      await()
          .untilAsserted(
              () ->
                  assertThat(link.status().detail())
                      .isEqualTo("listening on " + elsewhere.bridge()));
      elsewhere.write("here".getBytes(US_ASCII));
      await().until(() -> tape.toString().equals("/here"));
      link.close();
    }
  }

  @Test
  void aNameThatFitsTwoPortsOpensNeither() {
    List<FoundPort> twins =
        List.of(
            new FoundPort(cable.bridge().toString(), "A", 0x0403, 0x6001),
            new FoundPort(cable.wrench().toString(), "B", 0x0403, 0x6001));
    SerialLink link = link("usb:0403:6001", () -> twins, tape, null);
    await().until(() -> link.status().state() == LinkState.WAITING);
    assertThat(link.status().detail())
        .isEqualTo(
            "port usb:0403:6001 is ambiguous: "
                + cable.bridge()
                + " and "
                + cable.wrench()
                + " answer to it; unplug one, or name the port by its path or USB serial number");
  }

  @Test
  void aPortInUseIsRefusedUntilTheOtherLetsGo() {
    SerialLink first = up(cable.bridge().toString(), tape);
    SerialLink second = link(cable.bridge().toString(), List::of, new Tape(), null);
    await()
        .untilAsserted(
            () ->
                assertThat(second.status().detail())
                    .isEqualTo("port " + cable.bridge() + " is in use by another program"));
    assertThat(first.status().state()).isEqualTo(LinkState.UP);
    first.close();
    await().until(() -> second.status().state() == LinkState.UP);
  }

  @Test
  void aPortLockedByAnotherProcessIsRefused() throws IOException, InterruptedException {
    Process other =
        new ProcessBuilder("flock", "-x", cable.bridge().toString(), "sleep", "60").start();
    try {
      await().until(() -> !tryLock());
      SerialLink link = link(cable.bridge().toString(), List::of, tape, null);
      await()
          .untilAsserted(
              () ->
                  assertThat(link.status().detail())
                      .isEqualTo("port " + cable.bridge() + " is in use by another program"));
    } finally {
      other.descendants().forEach(ProcessHandle::destroyForcibly);
      other.destroyForcibly().waitFor();
    }
  }

  @Test
  void thePollIsSentAgainAndAgainAlsoAfterACableWasPulled() {
    SerialLink link =
        link(cable.bridge().toString(), List::of, tape, "READ\r\n".getBytes(US_ASCII));
    assertThat(cable.read(18, LONG)).asString(US_ASCII).isEqualTo("READ\r\nREAD\r\nREAD\r\n");
    assertThat(link.send("A|1\r\n".getBytes(US_ASCII))).isTrue();
    cable.pull();
    cable.plug();
    assertThat(cable.read(12, LONG)).asString(US_ASCII).isEqualTo("READ\r\nREAD\r\n");
  }

  @Test
  void aSinkThatBlocksHoldsTheLineAndLosesNothing() {
    up(cable.bridge().toString(), tape);
    CountDownLatch gate = new CountDownLatch(1);
    tape.block(gate);
    String sent = "0123456789".repeat(3000);
    Thread wrench = new Thread(() -> cable.write(sent.getBytes(US_ASCII)));
    wrench.start();
    await().until(tape::blocked);
    assertThat(tape.toString()).isEmpty();
    gate.countDown();
    await().atMost(LONG).until(() -> tape.toString().equals(sent));
  }

  @Test
  void closesInBoundedTimeThoughTheSinkBlocks() {
    SerialLink link = up(cable.bridge().toString(), tape);
    tape.block(new CountDownLatch(1));
    cable.write("x".getBytes(US_ASCII));
    await().until(tape::blocked);
    Instant begun = Instant.now();
    link.close();
    assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(4));
    assertThat(link.status().state()).isEqualTo(LinkState.CLOSED);
    await().until(() -> tape.toString().equals("/"));
  }

  @Test
  void aDeviceThatTakesNothingMakesASendFalseAndDoesNotHangTheClose() {
    SerialLink link = up(cable.bridge().toString(), tape);
    Instant begun = Instant.now();
    assertThat(link.send(new byte[1_000_000])).isFalse();
    assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(4));
    begun = Instant.now();
    link.close();
    assertThat(Duration.between(begun, Instant.now())).isLessThan(Duration.ofSeconds(4));
    SerialLink next = up(cable.bridge().toString(), tape);
    assertThat(next.status().state()).isEqualTo(LinkState.UP);
  }

  private boolean tryLock() throws IOException, InterruptedException {
    return new ProcessBuilder("flock", "-n", "-x", cable.bridge().toString(), "true")
            .start()
            .waitFor()
        == 0;
  }

  private SerialLink up(String port, Tape sink) {
    SerialLink link = link(port, new PluggedPorts(), sink, null);
    await().until(() -> link.status().state() == LinkState.UP);
    return link;
  }

  private SerialLink link(String port, PortFinder finder, Tape sink, byte[] poll) {
    SerialSettings settings =
        new SerialSettings(
            "bench-1",
            PortName.parse(port),
            9600,
            8,
            1,
            Parity.NONE,
            Optional.ofNullable(poll),
            Duration.ofMillis(50));
    SerialLink link = new SerialLink(settings, finder, sink, Instant::now);
    links.add(link);
    link.start();
    return link;
  }
}
