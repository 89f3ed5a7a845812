package wrenchsim.shop;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import wrenchsim.truth.Happening;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.Expected;
import wrenchsim.wire.VerdictMessage;

/** What a person knows of the job at hand: what the bridge has credited, and what they did. */
final class Notes {
  private final Sheets sheets;
  private final Set<String> ticked = new HashSet<>();
  private final Set<String> believed = new HashSet<>();
  private final Set<String> meanwhile = new HashSet<>();
  private Optional<String> unfinished = Optional.empty();
  private Optional<String> job = Optional.empty();

  Notes(Sheets sheets) {
    this.sheets = sheets;
  }

  /** Reads what is expected; a new job is a new sheet. */
  void read(ExpectMessage heard) {
    if (heard.job().isPresent()) {
      if (!heard.job().equals(job)) {
        ticked.clear();
        believed.clear();
        unfinished = Optional.empty();
        meanwhile.clear();
        job = heard.job();
      }
      sheets.learn(heard);
    }
  }

  /** Notes what a verdict tells of what was done. */
  void mark(Happening happening, VerdictMessage verdict) {
    Happening.Work work = happening.work();
    if (!work.job().equals(job)) {
      return;
    }
    String pass = work.pass().orElse("");
    String place = work.fastener().orElse("");
    unfinished = verdict.isAgain() ? work.fastener() : Optional.empty();
    if (verdict.isCredited()) {
      String meant = work.expected().orElse("");
      ticked.add(Sheets.key(verdict.fastener().orElse(meant), pass));
      believed.add(Sheets.key(happening.mistake().isPresent() ? meant : place, pass));
    } else if (verdict.isRechecked()) {
      believed.add(Sheets.key(place, pass));
    } else if (verdict.isLoosened()) {
      ticked.removeIf(t -> t.startsWith(verdict.fastener().orElse(place) + " "));
      believed.removeIf(t -> t.startsWith(place + " "));
    }
  }

  /** Remembers what was done while the bridge could not hear of it. */
  void doneMeanwhile(Expected due) {
    meanwhile.add(Sheets.key(due));
  }

  /** Forgets that: from here on the bridge tells. */
  void backInRange() {
    meanwhile.clear();
  }

  /** What comes next in the same pass of a group, by memory alone. */
  Optional<Expected> nextByMemory(ExpectMessage heard, Expected last) {
    return sheets.pass(heard, last.group(), last.pass()).stream()
        .filter(e -> !isDone(e))
        .findFirst();
  }

  /**
   * What a person picks from where the order is free: what they know they have not done, whatever
   * the bridge, which can only count there, lists; first of all what they have begun.
   */
  List<Expected> choice(ExpectMessage heard, Expected listed) {
    if (!sheets.isFree(heard, listed)) {
      return List.of(listed);
    }
    List<Expected> open =
        sheets.pass(heard, listed.group(), listed.pass()).stream().filter(e -> !isDone(e)).toList();
    List<Expected> begun =
        open.stream().filter(e -> unfinished.equals(Optional.of(e.fastener()))).toList();
    if (!begun.isEmpty()) {
      return begun;
    }
    return open.isEmpty() ? List.of(listed) : open;
  }

  private boolean isDone(Expected pass) {
    String key = Sheets.key(pass);
    return believed.contains(key) || meanwhile.contains(key);
  }

  /** The fasteners that should be tight by now in a pass of a group, and those that are due. */
  List<Expected> doneOrDue(ExpectMessage heard, String group, String pass) {
    Set<String> due = new HashSet<>();
    heard.expect().forEach(e -> due.add(Sheets.key(e)));
    return sheets.pass(heard, group, pass).stream()
        .filter(e -> ticked.contains(Sheets.key(e)) || due.contains(Sheets.key(e)))
        .toList();
  }

  /** The other fasteners of the same pass and group: the following ones, then those before. */
  List<String> neighbours(ExpectMessage heard, Expected due) {
    List<String> following = new ArrayList<>();
    List<String> before = new ArrayList<>();
    boolean passed = false;
    for (Expected each : sheets.pass(heard, due.group(), due.pass())) {
      if (each.fastener().equals(due.fastener())) {
        passed = true;
      } else {
        (passed ? following : before).add(each.fastener());
      }
    }
    Collections.reverse(before);
    following.addAll(before);
    return following;
  }

  /** Whether the sheet names every fastener. */
  boolean isWhole(ExpectMessage heard) {
    return sheets.isWhole(heard);
  }

  /** The passes of the groups of which nothing is expected now. */
  List<Expected> elsewhere(ExpectMessage heard) {
    Set<String> groups = new HashSet<>();
    heard.expect().forEach(e -> groups.add(e.group()));
    return sheets.all(heard).stream().filter(e -> !groups.contains(e.group())).toList();
  }

  /** What the sheet says of a fastener first. */
  Optional<Expected> find(ExpectMessage heard, String fastener) {
    return sheets.all(heard).stream().filter(e -> e.fastener().equals(fastener)).findFirst();
  }
}
