package wrenchsim.shop;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;

/**
 * The procedures as people know them: every fastener with its band, in the order of work; given, or
 * learnt from what stations expect.
 */
public final class Sheets {
  private final Map<String, Map<String, Expected>> sheets = new HashMap<>();
  private final Set<String> whole = new HashSet<>();
  private final Set<String> free = new HashSet<>();
  private final Map<String, String> firstJobs = new HashMap<>();

  /**
   * Gives a whole procedure.
   *
   * @param procedure its name and revision as in {@code expect}, with a space between: {@code
   *     RAM-210 C}
   * @param passes every pass of every fastener, in the order of work
   */
  public Sheets give(String procedure, List<Expected> passes) {
    passes.forEach(p -> sheet(procedure).put(key(p), p));
    whole.add(procedure);
    return this;
  }

  /** Learns what is expected; a procedure is known as a whole once its second job begins. */
  void learn(ExpectMessage heard) {
    String procedure = procedure(heard);
    Map<String, Expected> sheet = sheet(procedure);
    Set<String> listed = new HashSet<>();
    for (Expected due : heard.expect()) {
      sheet.putIfAbsent(key(due), due);
      String pass = procedure + " " + key(due.group(), due.pass());
      if (!listed.add(pass)) {
        free.add(pass);
      }
    }
    String job = heard.job().orElse("");
    if (!firstJobs.computeIfAbsent(procedure, p -> job).equals(job)) {
      whole.add(procedure);
    }
  }

  /** Whether no fastener of the procedure is unknown. */
  boolean isWhole(ExpectMessage heard) {
    return whole.contains(procedure(heard));
  }

  /** Whether a pass of a group goes in any order: several of it were listed at once before. */
  boolean isFree(ExpectMessage heard, Expected due) {
    return free.contains(procedure(heard) + " " + key(due.group(), due.pass()));
  }

  /** Everything known of the procedure, in order. */
  Collection<Expected> all(ExpectMessage heard) {
    return sheet(procedure(heard)).values();
  }

  /** One pass of a group, in order. */
  List<Expected> pass(ExpectMessage heard, String group, String pass) {
    List<Expected> found = new ArrayList<>();
    for (Expected known : all(heard)) {
      if (known.pass().equals(pass) && known.group().equals(group)) {
        found.add(known);
      }
    }
    return found;
  }

  private Map<String, Expected> sheet(String procedure) {
    return sheets.computeIfAbsent(procedure, p -> new LinkedHashMap<>());
  }

  private static String procedure(ExpectMessage heard) {
    return heard.procedure().orElse("");
  }

  /** What tells one pass of one fastener from another. */
  static String key(Expected pass) {
    return key(pass.fastener(), pass.pass());
  }

  static String key(String fastener, String pass) {
    return fastener + " " + pass;
  }
}
