package witnessmark.fuzz;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.config.ConfigFile;
import witnessmark.decode.ProfileDecoder;
import witnessmark.decode.ProfileFile;
import witnessmark.procedure.ProcedureFile;
import witnessmark.procedure.Sanity;
import witnessmark.toml.Fault;
import witnessmark.toml.FaultsException;

/** The files that people write: procedures, profiles, the configuration. */
final class TomlTargets {
  private static final List<String> TOML =
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
          "= true",
          "\\uD800",
          "\\U00110000",
          "= 1e400",
          "a.b.c = 1",
          "\"\" = 1",
          "\n[",
          "\n[[",
          "]]\n",
          " = \"",
          "\"\n",
          "# ");
  private static final byte[] FRAME =
      "W|TW-0417|123|2026-11-25T10:02:03.120Z|32.54|N.m|41.2|cw|7D85"
          .getBytes(StandardCharsets.US_ASCII);

  private TomlTargets() {}

  static List<Target<?>> all() {
    try {
      Path directory = furnished();
      List<String> profiles = new ArrayList<>();
      for (String name : List.of("comma-line", "demo-line", "nested-json", "scanner-line")) {
        profiles.add(Files.readString(Path.of("demo-data/profiles", name + ".toml")));
      }
      List<String> configurations = examples(Path.of("docs/configuration.md"));
      Path file = directory.resolve("shop.toml");
      Map<String, String> environment = Map.of("BROKER_PASSWORD", "x");
      return List.of(
          new TomlTarget(
              "procedures",
              60,
              List.of(Files.readString(Path.of("demo-data/RAM-210.toml")), procedure()),
              t -> Sanity.findings(ProcedureFile.parse("p.toml", t))),
          new TomlTarget(
              "profiles",
              200,
              profiles,
              t -> new ProfileDecoder(ProfileFile.parse("p.toml", t)).decode(FRAME)),
          new TomlTarget(
              "configuration", 200, configurations, t -> ConfigFile.parse(file, t, environment)));
    } catch (IOException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String procedure() throws IOException {
    String whole = Files.readString(Path.of("demo-data/RAM-210.toml"));
    return whole.substring(0, whole.indexOf("[[step]]\nid = \"carrier-right\""));
  }

  /** A directory with what the configuration page's examples name. */
  private static Path furnished() throws IOException {
    Path directory = Files.createTempDirectory("fuzz");
    Files.createDirectories(directory.resolve("profiles"));
    Files.createDirectories(directory.resolve("tls"));
    for (String name : List.of("comma-line", "demo-line", "nested-json", "scanner-line")) {
      Path profile = Path.of("profiles", name + ".toml");
      Files.copy(Path.of("demo-data").resolve(profile), directory.resolve(profile));
    }
    for (String pem : List.of("tls/ca.pem", "tls/shop-1.pem", "tls/shop-1.key")) {
      Files.writeString(directory.resolve(pem), "");
    }
    Files.writeString(directory.resolve("broker-password.txt"), "x\n");
    return directory;
  }

  private static List<String> examples(Path page) throws IOException {
    List<String> examples = new ArrayList<>();
    Matcher block =
        Pattern.compile("```toml\n(.*?)```", Pattern.DOTALL).matcher(Files.readString(page));
    while (block.find()) {
      String text = block.group(1);
      examples.add(text.contains("[bridge]") ? text : "[bridge]\nname = \"shop-1\"\n" + text);
    }
    return examples;
  }

  /** A reader that answers or lists the file's faults. */
  private record TomlTarget(String name, int share, List<String> texts, Function<String, ?> reader)
      implements Target<List<Fault>> {
    @Override
    public List<byte[]> samples() {
      return texts.stream().map(Mutator::utf8).toList();
    }

    @Override
    public List<String> words() {
      Set<String> words = new HashSet<>(TOML);
      for (String text : texts) {
        Matcher piece = Pattern.compile("[a-z-]+ = |\"[^\"\n]*\"|'[^'\n]*'").matcher(text);
        while (piece.find()) {
          words.add(piece.group());
        }
      }
      return words.stream().sorted().toList();
    }

    /** The library takes some 10 microseconds for each place that is no TOML, in any number. */
    @Override
    public int longest() {
      return 4 << 10;
    }

    /** The TOML library keeps a node for each mark, and its parser a state for each call. */
    @Override
    public Allowance allowance() {
      return new Allowance(12 << 20, 8_000);
    }

    @Override
    public List<Fault> parse(byte[] input) {
      try {
        reader.apply(new String(input, StandardCharsets.UTF_8));
        return List.of();
      } catch (FaultsException e) {
        if (e.faults().isEmpty()) {
          throw new AssertionError("refused without a fault");
        }
        return e.faults();
      }
    }

    @Override
    public String judge(byte[] input, List<Fault> faults) {
      StringBuilder kind = new StringBuilder(faults.isEmpty() ? "taken" : "refused");
      int before = 1;
      for (Fault fault : faults) {
        if (fault.toString().chars().anyMatch(Character::isISOControl)
            || fault.line() < before
            || fault.column() < 1) {
          throw new AssertionError("a fault that cannot be shown, or out of order");
        }
        before = fault.line();
        kind.append(' ').append(fault.what());
      }
      return kind.toString();
    }
  }
}
