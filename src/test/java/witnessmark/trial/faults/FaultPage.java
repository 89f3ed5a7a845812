package witnessmark.trial.faults;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The trials' page. */
final class FaultPage {
  private FaultPage() {}

  static List<String> of(Map<Fault, Row> rows, int scale) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        List.of(
            "# Fault trials",
            "",
            "Made by `mvn -q -B test-compile exec:exec@faults -Dfaults.scale="
                + scale
                + " -Dtrial.page=docs/fault-trials.md`: a real daemon, mosquitto, pseudo-terminals and",
            "files, each fault brought on from outside. The numbers and the words people see come from that run; the promises are those of",
            "[messages](messages.md#when-nothing-can-be-recorded) and [the log](ledger-format.md).",
            "",
            "*Kept*: readings whose sender (MQTT QoS 1) keeps them until they are acknowledged. *Once*: readings sent once, over a serial line or with QoS 0.",
            "*Lost*: kept, and not on record. *Doubled*: on record twice. *Not kept*: sent once and not on record; *stated* is what `not-kept` entries say of them.",
            ""));
    List<String> missed =
        rows.entrySet().stream()
            .flatMap(r -> r.getValue().broken().stream().map(b -> r.getKey().title() + ": " + b))
            .toList();
    lines.add(missed.isEmpty() ? "Every promise held." : "Broken:");
    missed.forEach(m -> lines.add("- " + m));
    lines.add("");
    lines.add(
        "| fault | kept: sent, recorded | once: sent, recorded | acknowledged | verdicts | refused | lost | doubled | not kept, stated |");
    lines.add("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
    rows.forEach((fault, row) -> lines.add(figures(fault.title(), row.figures())));
    rows.forEach(
        (fault, row) -> {
          lines.addAll(
              List.of(
                  "",
                  "## "
                      + fault.title().substring(0, 1).toUpperCase(java.util.Locale.ROOT)
                      + fault.title().substring(1),
                  "",
                  "Promised: " + fault.promise() + ".",
                  ""));
          row.seen().forEach(s -> lines.add("- " + s));
        });
    return lines;
  }

  private static String figures(String title, Figures f) {
    return "| %s | %d, %d | %d, %d | %d | %d | %d | %d | %d | %d, %d |"
        .formatted(
            title,
            f.sentKept(),
            f.recordedKept(),
            f.sentLoose(),
            f.recordedLoose(),
            f.acknowledged(),
            f.verdicts(),
            f.refused(),
            f.lost(),
            f.doubled(),
            f.missing(),
            f.stated());
  }
}
