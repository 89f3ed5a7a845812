package witnessmark.pipeline;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a decision must say, whoever wrote it into the log. */
class DecisionShapeTest extends SignedDecisions {
  private static final String DISPOSED =
      "{\"kind\":\"disposed\",\"job\":\"J-9\",\"fastener\":\"a/1\",\"nonconformity\":11,"
          + "\"disposition\":\"use-as-is\",\"by\":\"badge-07\",\"because\":\"x\","
          + "\"role\":\"technician\"}";

  @Test
  void aReleaseInTooLowARoleIsNamed() throws IOException {
    assertThat(disposed("low", DISPOSED))
        .containsExactly("use-as-is is decided as technician, which only quality may");
    assertThat(disposed("scrap", DISPOSED.replace("use-as-is", "scrap")))
        .containsExactly("scrap is decided as technician, which only quality may");
    assertThat(disposed("rework", DISPOSED.replace("use-as-is", "rework"))).isEmpty();
  }

  @Test
  void aRoleThatTheBadgeIsNotEnrolledAsIsNamed() throws IOException {
    assertThat(disposed("lent", DISPOSED.replace("technician", "second")))
        .containsExactly("decided by \"badge-07\" as second, which that badge is not enrolled as");
    assertThat(disposed("nobody", DISPOSED.replace("badge-07", "badge-99")))
        .containsExactly(
            "decided by \"badge-99\" as technician, which that badge is not enrolled as");
    assertThat(disposed("none", DISPOSED.replace(",\"role\":\"technician\"", "")))
        .containsExactly("says in no role that \"badge-07\" decided, as it must");
  }

  @Test
  void aMemberThatEveryEntryOfTheKindHasIsMissed() throws IOException {
    assertThat(disposed("by", DISPOSED.replace("\"by\":\"badge-07\",", "")))
        .containsExactly("has no text /by, as every disposed has");
    assertThat(disposed("type", DISPOSED.replace(":11,", ":\"11\",")))
        .containsExactly("has no number /nonconformity, as every disposed has");
    assertThat(disposed("word", DISPOSED.replace("use-as-is", "paint")))
        .containsExactly("its /disposition is \"paint\", which is no such word");
    assertThat(disposed("attested", "{\"kind\":\"attested\",\"job\":\"J-9\",\"step\":\"a\"}"))
        .containsExactly("has no text /by, as every attested has");
    assertThat(disposed("unknown", "{\"kind\":\"weather-noted\",\"job\":\"J-9\"}")).isEmpty();
  }

  private List<String> disposed(String name, String entry) throws IOException {
    List<byte[]> entries = new ArrayList<>(honest);
    long n = entries.size();
    String at = ",\"v\":1,\"at\":\"2026-11-25T10:00:00Z\",";
    String json = entry.replaceFirst("^\\{\"kind\":\"([a-z-]+)\",", "{\"kind\":\"$1\"" + at);
    entries.add(json.getBytes(UTF_8));
    return raw(name, entries).stream()
        .map(f -> f.replace("entry " + n + ": ", ""))
        .filter(f -> !f.startsWith("not signed by anybody's key"))
        .toList();
  }
}
