package witnessmark.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import picocli.CommandLine.Option;
import witnessmark.ledger.LedgerFiles;
import witnessmark.ledger.sqlite.SqliteReading;
import witnessmark.pipeline.Replay;
import witnessmark.procedure.Procedure;
import witnessmark.procedure.TightenStep;
import witnessmark.sight.Ability;
import witnessmark.wrench.Enrolments;
import witnessmark.wrench.Wrench;

/** The {@code --wrench} and {@code --data} options of a check: which wrenches are at hand. */
final class RackOption {
  private static final Map<String, Ability> WORDS =
      Map.of(
          "torque-only", Ability.TORQUE_ONLY,
          "angle", Ability.ANGLE,
          "position", Ability.POSITION,
          "breakaway", Ability.BREAKAWAY);
  private static final List<String> ORDER =
      List.of("torque-only", "angle", "position", "breakaway");

  @Option(
      names = "--wrench",
      paramLabel = "SERIAL=SHOWS",
      description =
          "What a wrench shows: torque-only, angle, position (by the "
              + "wrench, or by a scan before each reading) or breakaway; "
              + "repeat it for more.")
  private List<String> stated = List.of();

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Take the wrenches that are enrolled in this data directory.")
  private Path directory;

  /** The enrolled wrenches as they are now, by serial number; none without {@code --data}. */
  List<Wrench> enrolled() {
    if (directory == null) {
      return List.of();
    }
    if (directory.toString().isBlank()) {
      throw new Refusal(
          Exit.USAGE, "--data is empty; name the data directory, e.g. --data witnessmark-data");
    }
    try (SqliteReading reading = SqliteReading.briefly(new LedgerFiles(directory))) {
      return Replay.of(reading.live()).wrenches().values().stream()
          .map(Enrolments::newest)
          .sorted(Comparator.comparing(Wrench::serial))
          .toList();
    }
  }

  /**
   * What the wrenches show, by serial number; what is stated comes before what is enrolled.
   *
   * @throws IllegalArgumentException when a wrench or what it shows is not known
   */
  Map<String, Ability> abilities(Procedure procedure, List<Wrench> enrolled) {
    Map<String, Ability> abilities = new TreeMap<>();
    Map<String, Ability> said = new TreeMap<>();
    enrolled.forEach(
        w -> abilities.put(w.serial(), w.reportsAngle() ? Ability.ANGLE : Ability.TORQUE_ONLY));
    for (String each : stated) {
      int equals = each.lastIndexOf('=');
      if (equals < 1) {
        throw new IllegalArgumentException(
            "\"" + each + "\" does not say what the wrench shows; write it like TW-0417=angle");
      }
      String serial = known(each.substring(0, equals), procedure, abilities.keySet());
      String shows = Given.oneOf("ability", each.substring(equals + 1), ORDER);
      said.merge(serial, WORDS.get(shows), Ability::and);
    }
    abilities.putAll(said);
    return abilities;
  }

  /** A wrench that no step names can be used only where a step takes any. */
  private static String known(String serial, Procedure procedure, Set<String> enrolled) {
    Set<String> named = new TreeSet<>(enrolled);
    for (var step : procedure.steps()) {
      if (step instanceof TightenStep t) {
        if (t.wrenches().isEmpty()) {
          return serial;
        }
        named.addAll(t.wrenches());
      }
    }
    return named.isEmpty() ? serial : Given.oneOf("wrench", serial, named);
  }

  /** What is taken of the wrenches, in a sentence. */
  static String sentence(Map<String, Ability> abilities) {
    if (abilities.isEmpty()) {
      return "No wrench is named, so the weakest that the procedure takes is assumed: torque, and an"
          + " angle where a window asks for one. Name wrenches with --wrench SERIAL=angle, or take"
          + " those of --data DIR.";
    }
    List<String> each = new ArrayList<>();
    words(abilities).forEach((serial, shows) -> each.add(serial + " (" + shows + ")"));
    return "The wrenches are taken to be " + String.join(", ", each) + ".";
  }

  /** What each shows, as it is typed. */
  static Map<String, String> words(Map<String, Ability> abilities) {
    Map<String, String> words = new LinkedHashMap<>();
    abilities.forEach((serial, ability) -> words.put(serial, words(ability)));
    return words;
  }

  /** {@code torque-only}, or what it shows beside the torque, e.g. {@code angle+position}. */
  private static String words(Ability ability) {
    List<String> words = new ArrayList<>();
    ORDER.stream()
        .filter(w -> !w.equals("torque-only") && ability.and(WORDS.get(w)).equals(ability))
        .forEach(words::add);
    return words.isEmpty() ? "torque-only" : String.join("+", words);
  }
}
