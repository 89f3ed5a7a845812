package witnessmark.doctor;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;
import witnessmark.bench.Certificates;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.PtyPair;
import witnessmark.bench.Workshop;

/** The doctor in the situations that people come to it with. */
class DoctorIT extends Patient {
  @Test
  void aShopInOrderIsWellWithAndWithoutADaemonAtWork() throws IOException {
    List<JsonNode> quiet = findings("--config", config(), "--whole");
    assertThat(marked("bad", quiet)).isEmpty();
    assertThat(quiet)
        .extracting(f -> f.path("found").asText())
        .contains(
            "5 entries; the last 5 can be read.",
            "Its end is as it was signed.",
            "All 5 entries verify.",
            "No daemon works on it now.",
            "It lets us in without a user.",
            "The address is free for the daemon.",
            "All calibrations are in force (1).");
    try (DaemonProcess daemon = shop.daemon(broker)) {
      String before = Files.readString(directory.resolve("mosquitto.log"));
      List<JsonNode> busy = findings("--config", config());
      assertThat(marked("bad", busy)).isEmpty();
      assertThat(busy)
          .extracting(f -> f.path("found").asText())
          .anyMatch(f -> f.matches("A daemon works on it: process [0-9]+\\."))
          .contains("http://127.0.0.1:" + port + "/health answers 200.");
      String during = broker.log().substring(before.length());
      assertThat(during)
          .as("a client-id of its own, and a clean session")
          .containsPattern(
              "New client connected from .* as witnessmark-doctor-[0-9a-f]{8} \\(p2, c1")
          .doesNotContain("Received PUBLISH from witnessmark-doctor")
          .doesNotContain("already connected");
      assertThat(daemon.ended()).isFalse();
      broker.publish(
          "witnessmark/v1/bench-1/torque",
          List.of("{\"wrench\":\"TW-0417\",\"event\":1,\"torque\":\"33\",\"unit\":\"N.m\"}"));
      assertThat(broker.take("witnessmark/v1/shop-1/health", 1, Duration.ofSeconds(5)))
          .singleElement()
          .asString()
          .contains("\"state\":\"ok\"");
    }
    assertThat(shop.run("ledger", "verify")).startsWith("Verified: ");
  }

  @Test
  void itReadsLikeAPage() {
    Program.Ended ended = shop.attempt("doctor", "--config", "nowhere.toml");
    assertThat(ended.status()).isEqualTo(1);
    assertThat(ended.out())
        .contains(
            "configuration\n  BAD   ",
            "nowhere.toml cannot be read: there is no such file.\n"
                + "        -> Name the file that the daemon runs with: witnessmark doctor --config FILE\n",
            "1 to be mended (BAD), ");
    Program.Ended none = shop.attempt("doctor", "--data", "elsewhere");
    assertThat(none.out())
        .contains(
            "None is named, so brokers and ports are not looked at.",
            "elsewhere does not exist.",
            "witnessmark ledger create --data elsewhere");
  }

  @Test
  void everyFaultOfTheConfigurationIsListed() {
    shop.write(
        "typo.toml", "[bridge]\nname = \"shop 1\"\n[[mqtt]]\nname = \"shop\"\nulr = \"x\"\n");
    assertThat(bad("--config", "typo.toml"))
        .hasSize(3)
        .anyMatch(
            f -> f.startsWith("configuration: typo.toml:2:1: \"shop 1\" is no name -> Write 1 to"))
        .anyMatch(f -> f.contains("typo.toml:5:1: unknown key \"ulr\" in mqtt -> "));
  }

  @Test
  void aConfigurationThatCannotBeReadLeadsToNoNewLog() throws IOException {
    Workshop other = Workshop.in(Files.createDirectory(directory.resolve("other")));
    String out = other.attempt("doctor", "--config", "nowhere.toml").out();
    assertThat(out)
        .contains("data directory\n  warn  Where it is stands in the configuration")
        .doesNotContain("ledger create");
  }

  @Test
  void aBrokerThatIsNotThere() {
    broker.kill();
    assertThat(bad("--config", config()))
        .singleElement()
        .asString()
        .startsWith("broker broker: Nothing answers at " + broker.url())
        .contains("systemctl start mosquitto");
  }

  @Test
  void aKeyThatOthersMayReadAndOneThatIsGone() throws IOException {
    Path key = directory.resolve("witnessmark-data/ledger.key");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-r--r--"));
    assertThat(bad())
        .containsExactly(
            "key: The log's key witnessmark-data/ledger.key is open to others (rw-r--r--): who reads"
                + " it can sign another history. -> chmod 600 witnessmark-data/ledger.key");
    Files.setPosixFilePermissions(key, PosixFilePermissions.fromString("rw-------"));
    Files.delete(directory.resolve("witnessmark-data/ledger.pub"));
    assertThat(bad())
        .singleElement()
        .asString()
        .startsWith("key: witnessmark-data/ledger.pub is missing; nothing can be recorded")
        .contains("cp BACKUP/ledger.pub witnessmark-data/ledger.pub");
  }

  @Test
  void aWrenchThatIsBoundToALinkThatIsNotThere() {
    shop.run("wrench", "bind", "TW-0417", "--from", "brokr/bench-1", "--by", "badge-07");
    assertThat(bad("--config", config()))
        .containsExactly(
            "wrenches: TW-0417 is bound to brokr/bench-1, and the configuration has no link of that"
                + " name: broker. What it sends another way counts for nothing. -> Bind it to one"
                + " that is there: witnessmark wrench bind TW-0417 --from LINK --by BADGE");
    shop.run("wrench", "bind", "TW-0417", "--from", "broker/bench-1", "--by", "badge-07");
    assertThat(bad("--config", config())).isEmpty();
  }

  @Test
  void aPasswordThatOthersMayRead() throws IOException {
    Path password = shop.write("broker.pass", "secret-word\n");
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-r--r--"));
    shop.write(
        "open.toml",
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"broker\"\nurl = \""
            + broker.url()
            + "\"\nuser = \"bridge\"\npassword-file = \"broker.pass\"\n");
    assertThat(marked("warn", findings("--config", "open.toml")))
        .anyMatch(
            f ->
                f.matches(
                    "configuration: .*broker\\.pass is open to others \\(rw-r--r--\\)\\."
                        + " -> chmod g-wx,o-rwx .*broker\\.pass"));
    Files.setPosixFilePermissions(password, PosixFilePermissions.fromString("rw-r-----"));
    assertThat(marked("warn", findings("--config", "open.toml")))
        .noneMatch(f -> f.contains("broker.pass"));
  }

  @Test
  void aLogWhoseEndWasChangedIsFound() {
    shop.ledger().run("DROP TRIGGER entry_remains; DELETE FROM entry WHERE n = 4;");
    assertThat(bad()).isNotEmpty().allMatch(f -> f.contains("witnessmark ledger verify"));
  }

  @Test
  void portsThatAreMissingOrFree() throws IOException {
    try (PtyPair cable = PtyPair.plug(directory)) {
      shop.on(cable, "bench-1")
          .with(
              "[[serial]]\nname = \"gone\"\nport = \"/dev/ttyWM99\"\nstation = \"bench-2\"\n"
                  + "profile = \"demo-line.toml\"\n");
      assertThat(bad("--config", config()))
          .singleElement()
          .asString()
          .startsWith("port gone: Port /dev/ttyWM99 is not plugged in. -> Plug it in")
          .contains("/dev/serial/by-id/");
    }
  }

  @Test
  void aPasswordThatIsWrongAndACertificateThatIsOver() throws IOException {
    Certificates authority = Certificates.authority(directory.resolve("tls"));
    authority.signExpired("old", "IP:127.0.0.1");
    authority.sign("good", "IP:127.0.0.1");
    authority.sign("other", "DNS:broker.example");
    Certificates stranger = Certificates.authority(directory.resolve("stranger"));
    shop.write("pw.txt", "wrong\n");
    shop.write("passwd", "");
    assertThat(secured(authority, "old", authority.ca()))
        .singleElement()
        .asString()
        .startsWith("broker tls: The broker's certificate has expired on ")
        .contains("openssl s_client -connect 127.0.0.1:");
    assertThat(secured(authority, "other", authority.ca()))
        .singleElement()
        .asString()
        .startsWith("broker tls: The broker's certificate is for broker.example, not for");
    assertThat(secured(authority, "good", stranger.ca()))
        .singleElement()
        .asString()
        .contains("Name that signer's certificate with ca-file");
    assertThat(secured(authority, "good", authority.ca()))
        .singleElement()
        .asString()
        .startsWith("broker tls: The broker refused user \"witnessmark\"")
        .contains(
            "mosquitto_passwd /etc/mosquitto/passwd witnessmark && systemctl reload mosquitto",
            "install -m 640 -g mosquitto /dev/null /etc/mosquitto/passwd")
        .doesNotContain("wrong");
  }

  private List<String> secured(Certificates authority, String name, Path ca) throws IOException {
    Path files = Files.createTempDirectory(directory, "secured");
    try (Mosquitto tls =
        Mosquitto.start(
            files,
            "certfile " + authority.certificate(name),
            "keyfile " + authority.key(name),
            "password_file " + directory.resolve("passwd"),
            "allow_anonymous false")) {
      shop.write(
          "tls.toml",
          "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"tls\"\nurl = \"ssl://127.0.0.1:"
              + tls.port()
              + "\"\nuser = \"witnessmark\"\npassword-file = \"pw.txt\"\nca-file = \""
              + ca
              + "\"\n");
      return bad("--config", "tls.toml");
    }
  }

  @Test
  void aPortThatDoesNotEncrypt() {
    shop.write(
        "plain.toml",
        "[bridge]\nname = \"shop-1\"\n[[mqtt]]\nname = \"tls\"\nurl = \"ssl://127.0.0.1:"
            + broker.port()
            + "\"\n");
    assertThat(bad("--config", "plain.toml"))
        .singleElement()
        .asString()
        .contains("does not speak TLS", "write tcp:// in url");
  }
}
