package witnessmark.scan;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.fuzz.Target;
import witnessmark.pipeline.Bench;

/** Codes scanned at a bench with a job, at one that asks for a fastener, and at an idle one. */
public final class ScanTarget implements Target<Meant> {
  private static final Consumer<Bench> ASKING =
      bench -> {
        bench.hit("50 N.m");
        bench.hit("TW-1", "49 N.m", "", "elsewhere/9");
      };

  private final List<Bench> benches = new ArrayList<>();

  public ScanTarget() {
    String procedure =
        Bench.group(3)
            .replace("title = \"Test\"\n", "title = \"Test\"\nunit-pattern = \"ATR-.*\"\n");
    benches.add(Bench.without(procedure));
    benches.add(Bench.on(procedure));
    Bench asking = Bench.on(procedure);
    ASKING.accept(asking);
    asking.scan("badge-07");
    benches.add(asking);
  }

  @Override
  public String name() {
    return "scanned codes";
  }

  @Override
  public int share() {
    return 500;
  }

  @Override
  public List<byte[]> samples() {
    List<String> codes =
        new ArrayList<>(List.of("badge-07", "ATR-26-0147", "a/2", "J-6", "P-1", "a", "4012345"));
    Arrays.stream(CommandCode.values()).map(CommandCode::code).forEach(codes::add);
    return codes.stream().map(c -> c.getBytes(StandardCharsets.UTF_8)).toList();
  }

  @Override
  public List<String> words() {
    return List.of("wm:", "J-", "J-99999999999999999999", "a/", "/", "ATR-", "badge-", "\\E", "(?");
  }

  @Override
  public Allowance allowance() {
    return new Allowance(512 << 10, 200);
  }

  /** The decoders let 1 to 512 characters through. */
  @Override
  public int longest() {
    return 512;
  }

  @Override
  public Meant parse(byte[] input) {
    Bench bench = benches.get(input.length % benches.size());
    Code code =
        new Code(
            new String(input, StandardCharsets.UTF_8),
            Bench.STATION,
            input.length % 2 == 0 ? Optional.of("badge-07") : Optional.empty(),
            bench.now());
    return Reader.read(bench.shop(), code, n -> entry(bench, n));
  }

  private static Optional<Entry> entry(Bench bench, long n) {
    return n >= 0 && n < bench.size() ? Optional.of(bench.log().get((int) n)) : Optional.empty();
  }

  @Override
  public String judge(byte[] input, Meant meant) {
    if (meant.text().isBlank() || meant.text().chars().anyMatch(Character::isISOControl)) {
      throw new AssertionError("a sentence that cannot be shown");
    }
    for (Entry entry : meant.entries()) {
      if (!EntryJson.read(EntryJson.bytes(entry)).equals(entry)) {
        throw new AssertionError("an entry that is not read as it was written");
      }
    }
    boolean taken = !meant.entries().isEmpty();
    return (taken ? "taken " : "refused ") + meant.meaning() + ' ' + meant.text();
  }
}
