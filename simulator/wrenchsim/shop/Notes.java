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

/** What a person has ticked on the sheet of the job at hand, as the bridge told it. */
final class Notes {
  private final Sheets sheets;
  private final Set<String> ticked = new HashSet<>();
  private final Set<String> meanwhile = new HashSet<>();
  private Optional<String> job = Optional.empty();

  Notes(Sheets sheets) {
    this.sheets = sheets;
  }

  /** Reads what is expected; a new job is a new sheet. */
  void read(ExpectMessage heard) {
    if (heard.job().isPresent()) {
      if (!heard.job().equals(job)) {
        ticked.clear();
        meanwhile.clear();
        job = heard.job();
      }
      sheets.learn(heard);
    }
  }

  /** Ticks what was credited, and takes the ticks off what was undone. */
  void mark(Happening happening, VerdictMessage verdict) {
    Happening.Work work = happening.work();
    if (!work.job().equals(job)) {
      return;
    }
    if (verdict.isCredited()) {
      String fastener = verdict.fastener().or(work::expected).orElse("");
      ticked.add(Sheets.key(fastener, work.pass().orElse("")));
    } else if (verdict.isLoosened()) {
      String fastener = verdict.fastener().or(work::fastener).orElse("");
      ticked.removeIf(t -> t.startsWith(fastener + " "));
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
        .filter(e -> !ticked.contains(Sheets.key(e)) && !meanwhile.contains(Sheets.key(e)))
        .findFirst();
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
