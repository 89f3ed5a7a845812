package witnessmark.demo;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.OpenJob;
import witnessmark.desk.Release;
import witnessmark.entry.Moments;
import witnessmark.entry.Role;
import witnessmark.pipeline.Journal;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/**
 * The invented scene of the demo: people, wrenches, procedure, configuration, and what goes wrong.
 */
final class Scene {
  static final String TECHNICIAN = "badge-07";
  static final String QUALITY = "badge-11";
  static final String UNIT = "ATR-26-0147";

  /** The file that stands for TW-0502's serial cable. */
  static final String LINE = "tw-0502";

  /** The fastener that is loosened by mistake. */
  static final String LOOSENED = "caliper/2";

  static final List<String> MISTAKES =
      List.of(
          "cross-member/front-right=under",
          "carrier-right/1=redeliver",
          "cross-member/rear-left=over",
          LOOSENED + "=loosen");

  private static final String PROCEDURE = "RAM-210.toml";

  private Scene() {}

  static boolean hasSocat() {
    return Arrays.stream(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .anyMatch(d -> Files.isExecutable(Path.of(d, "socat")));
  }

  /** Writes what a shop would write by hand, and returns the configuration. */
  static Path writeFiles(Path directory, String broker, boolean serial) throws IOException {
    Files.createDirectories(directory);
    Files.writeString(directory.resolve(PROCEDURE), bundled(PROCEDURE));
    Files.writeString(directory.resolve("demo-line.toml"), bundled("profiles/demo-line.toml"));
    String text =
        "[bridge]\nname = \"demo\"\ndata = \"data\"\n\n[[mqtt]]\nname = \"broker\"\nurl = \""
            + broker
            + "\"\n";
    if (serial) {
      text +=
          "\n[[serial]]\nname = \"line\"\nport = \""
              + directory.resolve(LINE).toAbsolutePath()
              + "\"\nstation = \"bench-1\"\nprofile = \"demo-line.toml\"\nbaud = 115200\n";
    }
    Path config = directory.resolve("shop.toml");
    Files.writeString(config, text);
    return config;
  }

  /** Enrols, releases and opens; returns the job's name. */
  static String open(Journal journal, String station) throws IOException {
    journal.carryOut(new EnrolOperator(TECHNICIAN, "bench 1", Optional.empty()), Moments.now());
    journal.carryOut(
        new EnrolOperator(QUALITY, Optional.of("quality"), List.of(Role.QUALITY), Optional.empty()),
        Moments.now());
    journal.carryOut(wrench("TW-0417", "20 N.m", "100 N.m", "C-26-118"), Moments.now());
    journal.carryOut(wrench("TW-0502", "5 N.m", "25 N.m", "C-26-121"), Moments.now());
    String text = bundled(PROCEDURE);
    journal.carryOut(
        new Release(ProcedureFile.parse(PROCEDURE, text), text, Optional.of(QUALITY)),
        Moments.now());
    long n =
        journal.carryOut(
            new OpenJob("RAM-210", Optional.empty(), UNIT, station, Optional.of(TECHNICIAN)),
            Moments.now());
    return "J-" + n;
  }

  private static EnrolWrench wrench(String serial, String low, String high, String certificate) {
    Instant today = Moments.now().truncatedTo(ChronoUnit.DAYS);
    return new EnrolWrench(
        serial,
        Torque.parse(low),
        Torque.parse(high),
        today.minus(60, ChronoUnit.DAYS),
        today.plus(300, ChronoUnit.DAYS),
        Optional.of(certificate),
        Optional.of(new Digits("1.0")),
        Optional.of(QUALITY));
  }

  private static String bundled(String name) throws IOException {
    try (InputStream in = Scene.class.getResourceAsStream("/demo-data/" + name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }
}
