package witnessmark.cli.answer;

import java.util.List;
import java.util.Map;
import witnessmark.ledger.verify.KeyStep;

/** The changes of a log's key that a check followed, for people and for programs. */
public final class KeySteps {
  private KeySteps() {}

  public static String sentence(KeyStep step) {
    return "Its key was changed at entry "
        + step.entry()
        + ": the key with id "
        + step.from()
        + " vouched for the key with id "
        + step.to()
        + ", which signs from there on.";
  }

  public static List<Map<String, Object>> json(List<KeyStep> steps) {
    return steps.stream()
        .map(s -> Json.object("entry", s.entry(), "from", s.from(), "to", s.to()))
        .toList();
  }
}
