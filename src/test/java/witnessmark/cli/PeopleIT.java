package witnessmark.cli;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** Decisions signed by a person's key, and a wrench bound to its link, by the real program. */
class PeopleIT {
  private static final String PASSPHRASE = "seven green bolts";
  private static final String[] SIGNED = {
    "--sign-with", "badge-11.key", "--passphrase-file", "pass"
  };

  @TempDir private Path directory;
  private Program program;
  private Workshop shop;

  @BeforeEach
  void qualityHoldsAKey() throws IOException {
    shop = Workshop.furnished(directory);
    program = new Program(directory);
    Files.writeString(directory.resolve("pass"), PASSPHRASE + "\n");
    Files.writeString(directory.resolve("wrong"), "eight green bolts\n");
    for (String secret : List.of("pass", "wrong")) {
      Files.setPosixFilePermissions(
          directory.resolve(secret), PosixFilePermissions.fromString("rw-------"));
    }
    shop.run("operator", "key", "make", "badge-11", "--passphrase-file", "pass");
    String out =
        signed("operator", "key", "enrol", "badge-11", "--public", "badge-11.key.pub").orThrow();
    assertThat(out).startsWith("badge-11 decides with its key from now on (entry 5).\n");
  }

  private Program.Ended signed(String... command) {
    return program.run(
        Stream.of(Stream.of(command), Stream.of("--by", "badge-11"), Stream.of(SIGNED))
            .flatMap(s -> s)
            .toArray(String[]::new));
  }

  private String sh(String script) throws IOException {
    Path log = directory.resolve("sh.log");
    Process process =
        new ProcessBuilder("sh", "-ec", script)
            .directory(directory.toFile())
            .redirectErrorStream(true)
            .redirectOutput(log.toFile())
            .start();
    try {
      assertThat(process.waitFor()).as(Files.readString(log)).isZero();
    } catch (InterruptedException e) {
      throw new AssertionError(e);
    }
    return Files.readString(log);
  }

  @Test
  void openSslOpensTheSealedKeyAndFindsItsPublicHalf() throws IOException {
    assertThat(sh("openssl pkey -in badge-11.key -passin file:pass -pubout"))
        .isEqualTo(Files.readString(directory.resolve("badge-11.key.pub")));
    assertThat(sh("openssl asn1parse -in badge-11.key"))
        .contains(":PBES2", ":PBKDF2", ":hmacWithSHA256", ":aes-256-cbc")
        .containsPattern("INTEGER +:0927C0"); // 600,000
    assertThat(Files.getPosixFilePermissions(directory.resolve("badge-11.key")))
        .isEqualTo(PosixFilePermissions.fromString("rw-------"));
    assertThat(
            program.run("operator", "key", "make", "badge-11", "--passphrase-file", "pass").err())
        .isEqualTo("badge-11.key exists already and stays as it is; name another with --out\n");
    try (Stream<Path> files = Files.list(directory.resolve("witnessmark-data"))) {
      for (Path file : files.filter(f -> !f.endsWith("ledger.key")).toList()) {
        assertThat(new String(Files.readAllBytes(file), ISO_8859_1))
            .as("%s", file)
            .doesNotContain(PASSPHRASE)
            .doesNotContain("PRIVATE KEY");
      }
    }
  }

  @Test
  void aKeyThatOthersMayReadIsTold() throws IOException {
    Files.setPosixFilePermissions(
        directory.resolve("badge-11.key"), PosixFilePermissions.fromString("rw-r--r--"));
    Program.Ended enrolled = signed("operator", "enrol", "badge-20");
    assertThat(enrolled.status()).isZero();
    assertThat(enrolled.err())
        .isEqualTo(
            "badge-11.key is open to others (rw-r--r--). Run: chmod g-wx,o-rwx badge-11.key\n");
  }

  @Test
  void aBadgeWithAKeyDecidesWithItAndNobodyInItsName() {
    assertThat(program.run("wrench", "retire", "TW-0417", "--by", "badge-11", "--because", "fell"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "badge-11 decides with the key of entry 5 only: name its file"
                            + " (--sign-with FILE).\n"));
    assertThat(
            program.run(
                "operator",
                "enrol",
                "badge-20",
                "--by",
                "badge-11",
                "--sign-with",
                "badge-11.key",
                "--passphrase-file",
                "wrong"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(4),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "The passphrase does not open badge-11.key, or the file is damaged. Nothing"
                            + " was recorded: try again, or use a copy of it.\n"));
    assertThat(
            program.run(
                "operator", "enrol", "badge-20", "--by", "badge-11", "--sign-with", "badge-11.key"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(4),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "The passphrase cannot be asked for: there is no terminal. Give"
                            + " --passphrase-file FILE, or WITNESSMARK_PASSPHRASE.\n"));
    assertThat(program.run("operator", "enrol", "badge-20"))
        .satisfies(
            e -> assertThat(e.status()).isEqualTo(1),
            e ->
                assertThat(e.err())
                    .isEqualTo(
                        "Quality decides with keys here, and only so who belongs to the shop. Ask"
                            + " quality: badge-11.\n"));
    signed("operator", "enrol", "badge-20").orThrow();
    JsonNode people = Json.of(program.run("operator", "list", "--json").orThrow());
    assertThat(people.findValuesAsText("badge")).contains("badge-20");
    assertThat(people.findValuesAsText("key")).hasSize(1);
    assertThat(program.run("ledger", "verify").orThrow()).startsWith("Verified: 7 entries");
  }

  @Test
  void aDispositionIsSignedShownProvedAndCheckedByHand() throws IOException {
    try (Mosquitto broker = Mosquitto.start(directory)) {
      shop.on(broker);
      signed("wrench", "bind", "TW-0417", "--from", "broker/bench-1").orThrow();
      assertThat(shop.open("RAM-210", "ATR-26-0147", "bench-1")).isEqualTo("J-7");
      shop.run("attest", "J-7", "frame-check", "--by", "badge-07");
      try (DaemonProcess daemon = shop.daemon(broker)) {
        broker.publish("witnessmark/v1/bench-1/torque", List.of(reading(1, "45.0")));
        await()
            .atMost(Duration.ofSeconds(20))
            .until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 10);
        daemon.stop();
      }
    }
    String[] dispose = {
      "dispose", "J-7", "carrier-left/1", "--as", "replace", "--because", "new bolt"
    };
    assertThat(
            program
                .run(
                    Stream.concat(Stream.of(dispose), Stream.of("--by", "badge-11"))
                        .toArray(String[]::new))
                .status())
        .isEqualTo(1);
    signed(dispose).orThrow();
    assertThat(program.run("trace", "--unit", "ATR-26-0147", "--record").orThrow())
        .contains("replace by badge-11 as quality: new bolt (signed with the key of entry 5)\n");
    program.run("ledger", "prove", "--unit", "ATR-26-0147", "--out", "p.json").orThrow();
    program.run("trace", "--unit", "ATR-26-0147", "--certificate", "c.pdf", "--draft").orThrow();
    assertThat(
            program
                .run("ledger", "check-proof", "c.pdf", "--key", "witnessmark-data/ledger.pub")
                .orThrow())
        .contains("Entry 10, by badge-11: signed with the person's key, of entry 5.");
    String page = Files.readString(Path.of("docs/ledger-format.md"));
    String script = page.split("By hand, for entry 9:\n\n```sh\n")[1].split("```")[0];
    program.run("ledger", "verify").orThrow();
    Files.writeString(
        directory.resolve("checkpoint.txt"), program.run("ledger", "checkpoint").orThrow());
    byte[] entry =
        shop.ledger()
            .run("SELECT CAST(bytes AS TEXT) FROM entry WHERE n = 10;")
            .get(0)
            .getBytes(UTF_8);
    Files.write(directory.resolve("entry-10.json"), entry);
    String publicKey =
        Json.of(program.run("operator", "list", "--json").orThrow()).findValuesAsText("key").get(0);
    String tenth = script.replace("1\\n%s\\n9\\n", "1\\n%s\\n10\\n").replace("entry-9", "entry-10");
    assertThat(sh("PUBLIC_KEY='" + publicKey + "'\n" + tenth))
        .contains("Signature Verified Successfully");
  }

  private static String reading(int event, String torque) {
    return "{\"wrench\":\"TW-0417\",\"event\":%d,\"torque\":\"%s\",\"unit\":\"N.m\",\"angle\":\"40\",\"fastener\":\"carrier-left/1\"}"
        .formatted(event, torque);
  }

  @Test
  void aReadingOfABoundWrenchByAnotherWayIsOnRecordAndAcceptsNothing() {
    try (Mosquitto broker = Mosquitto.start(directory)) {
      shop.on(broker);
      signed("wrench", "bind", "TW-0417", "--from", "bench-1-cable").orThrow();
      shop.open("RAM-210", "ATR-26-0147", "bench-1");
      shop.run("attest", "J-7", "frame-check", "--by", "badge-07");
      try (DaemonProcess daemon = shop.daemon(broker)) {
        broker.publish("witnessmark/v1/bench-1/torque", List.of(reading(1, "33.0")));
        await()
            .atMost(Duration.ofSeconds(20))
            .until(() -> shop.ledger().number("SELECT count(*) FROM entry;") == 10);
        daemon.stop();
      }
    }
    assertThat(program.run("explain", "9").orThrow())
        .contains("TW-0417 does not report by this way: use it where it belongs, or ask quality");
    assertThat(program.run("trace", "--unit", "ATR-26-0147", "--record").orThrow())
        .contains("0 of 6 fastener passes stand");
    assertThat(program.run("wrench", "list", "--json").orThrow()).contains("bench-1-cable");
  }
}
