package wrenchsim.wire;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What a station is waiting for.
 *
 * @param state {@code idle}, {@code tighten}, {@code attest}, {@code measure}, {@code dispose},
 *     {@code answer}, {@code complete}, or {@code not-recording}: nothing counts now
 * @param job the job, where there is one
 * @param unit the number of the unit being assembled, where there is a job
 * @param procedure the procedure and its revision, where there is a job
 * @param done fastener passes done
 * @param expect the fasteners that may be tightened now, as listed
 * @param others whether something is expected besides, which a person does without a wrench
 */
public record ExpectMessage(
    String state,
    Optional<String> job,
    Optional<String> unit,
    Optional<String> procedure,
    long done,
    List<Expected> expect,
    boolean others) {

  private static final String WHAT = "the expect message";

  public ExpectMessage {
    Objects.requireNonNull(state, "state");
    expect = List.copyOf(expect);
  }

  /** Reads a payload; an empty one (a retained message cleared) is an idle station. */
  public static ExpectMessage read(byte[] payload) throws MalformedMessage {
    if (payload.length == 0) {
      return new ExpectMessage(
          "idle", Optional.empty(), Optional.empty(), Optional.empty(), 0, List.of(), false);
    }
    JsonNode root = JsonText.object(payload, WHAT);
    List<Expected> expect = new ArrayList<>();
    for (JsonNode element : root.path("expect")) {
      if (Expected.isTightening(element)) {
        expect.add(Expected.read(element));
      }
    }
    return new ExpectMessage(
        JsonText.required(root, "state", WHAT),
        JsonText.text(root, "job"),
        JsonText.text(root, "unit"),
        JsonText.text(root, "procedure")
            .map(p -> p + JsonText.text(root, "revision").map(r -> " " + r).orElse("")),
        JsonText.whole(root, "done").orElse(0L),
        expect,
        expect.size() < root.path("expect").size());
  }

  /** Whether there is a fastener to tighten and nothing else comes first. */
  public boolean isTighten() {
    return state.equals("tighten") && !expect.isEmpty();
  }

  /** Whether there is nothing left to do. */
  public boolean isOver() {
    return state.equals("complete") || state.equals("idle");
  }
}
