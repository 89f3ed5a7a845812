package witnessmark.procedure;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;
import witnessmark.torque.Digits;
import witnessmark.torque.Label;

/** Reads one {@code [[step]]}. */
final class StepReader {
  static final int TITLE = 200;
  static final int PROSE = 2_000;
  private static final Pattern ID = Pattern.compile("[a-z0-9-]{1,64}");
  private static final List<String> KINDS = List.of("tighten", "attest", "measure");

  /** Keys that a step of one kind alone has. */
  private static final Map<String, List<String>> TELLING =
      Map.of(
          "tighten",
          List.of("fasteners", "positions", "order", "torque", "tolerance", "pass"),
          "attest",
          List.of("statement"),
          "measure",
          List.of("labels", "unit", "spread"));

  private final Section section;

  StepReader(Section section) {
    this.section = section;
  }

  Draft read() {
    Optional<String> id = id(section, "id", "step");
    Optional<String> written = section.requiredText("kind", "allowed are tighten, attest, measure");
    Optional<String> kind = written.filter(this::known);
    Optional<String> title =
        section
            .requiredText("title", "give a title for people")
            .flatMap(t -> Written.checked(section, "title", t, x -> Prose.line("title", x, TITLE)));
    Optional<List<Prerequisite>> after = after(section);
    Head head = new Head(id, title, after, prose("note"), line("picture"));
    if (kind.isEmpty()) {
      meant(written).ifPresent(k -> finished(k, head)); // for its faults alone
      return new Draft(
          section, id.orElse(""), kind, after, List.of(single(id.orElse(""))), Optional.empty());
    }
    return finished(kind.get(), head);
  }

  private Draft finished(String kind, Head head) {
    Draft draft = body(kind, head);
    section.finish();
    return draft;
  }

  /** The kind that a faulty one was meant to be, by its spelling or by what else the step says. */
  private Optional<String> meant(Optional<String> written) {
    return written
        .flatMap(k -> Nearest.of(k, KINDS))
        .or(
            () ->
                KINDS.stream()
                    .filter(k -> TELLING.get(k).stream().anyMatch(section::has))
                    .findFirst());
  }

  /** What every kind of step has. */
  record Head(
      Optional<String> id,
      Optional<String> title,
      Optional<List<Prerequisite>> after,
      Optional<String> note,
      Optional<String> picture) {
    boolean complete() {
      return id.isPresent() && title.isPresent();
    }
  }

  private Draft body(String kind, Head head) {
    String id = head.id().orElse("");
    if (kind.equals("tighten")) {
      return new TightenReader(section, head).read();
    }
    Optional<Step> step = kind.equals("attest") ? attest(head) : measure(head);
    return new Draft(section, id, Optional.of(kind), head.after(), List.of(single(id)), step);
  }

  private Draft.DraftPass single(String id) {
    return new Draft.DraftPass(section, id, List.of(), Optional.empty());
  }

  private Optional<Step> attest(Head head) {
    Optional<String> statement =
        section
            .requiredText("statement", "write the sentence that a person confirms")
            .flatMap(
                t ->
                    Written.checked(
                        section, "statement", t, x -> Prose.lines("statement", x, PROSE)));
    boolean renew = section.bool("renew").orElse(false);
    if (!head.complete() || statement.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new AttestStep(
            head.id().get(),
            head.title().get(),
            head.after(),
            statement.get(),
            renew,
            head.note(),
            head.picture()));
  }

  private Optional<Step> measure(Head head) {
    List<String> labels = section.has("labels") ? labels("labels", "label") : List.of("value");
    Optional<String> unit =
        section
            .requiredText("unit", "give the unit that people read, e.g. \"mm\"")
            .flatMap(t -> Written.label(section, "unit", "unit", t));
    Optional<Digits> low = limit("min");
    Optional<Digits> high = limit("max");
    Optional<Digits> spread = Written.decimal(section, "spread", "1");
    if (spread.isPresent() && spread.get().value().signum() < 0) {
      section.fault("spread", "spread " + spread.get() + " is negative", "0 or more is allowed");
    }
    if (low.isPresent()
        && high.isPresent()
        && low.get().value().compareTo(high.get().value()) > 0) {
      section.fault(
          "min",
          "limits upside down: min " + low.get() + " is above max " + high.get(),
          "exchange min and max");
      return Optional.empty();
    }
    if (!head.complete() || labels.isEmpty() || unit.isEmpty() || low.isEmpty() || high.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new MeasureStep(
            head.id().get(),
            head.title().get(),
            head.after(),
            labels,
            unit.get(),
            low.get(),
            high.get(),
            spread,
            head.note(),
            head.picture()));
  }

  private Optional<Digits> limit(String key) {
    if (!section.has(key)) {
      section.fault(key, "step has no \"" + key + "\"", "give the limit, e.g. " + key + " = \"8\"");
    }
    return Written.decimal(section, key, "8");
  }

  /** A list of distinct labels, at least one; empty where any is faulty. */
  private List<String> labels(String key, String what) {
    return labels(section, key, what);
  }

  static List<String> labels(Section section, String key, String what) {
    Optional<List<String>> given = section.texts(key);
    if (section.isEmptyList(key)) {
      section.fault(key, key + " is an empty list", "name at least one, or leave " + key + " out");
    }
    List<String> good = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < given.map(List::size).orElse(0); i++) {
      String label = given.get().get(i);
      if (!seen.add(label)) {
        section.fault(
            key, i, what + " \"" + label + "\" is named twice", "give each a name of its own");
      } else if (ok(section, key, i, what, label)) {
        good.add(label);
      }
    }
    return good.size() == given.map(List::size).orElse(0) ? good : List.of();
  }

  private static boolean ok(Section section, String key, int i, String what, String label) {
    try {
      Label.check(what, label);
      return true;
    } catch (IllegalArgumentException e) {
      section.fault(key, i, what + " \"" + label + "\" is malformed", Written.LABEL);
      return false;
    }
  }

  /** The id of a step, or the name of a pass. */
  static Optional<String> id(Section section, String key, String owner) {
    return section
        .requiredText(key, "give one of lower-case letters, digits and hyphens")
        .filter(
            t -> {
              boolean good = ID.matcher(t).matches();
              if (!good) {
                section.fault(
                    key,
                    owner + " " + key + " \"" + t + "\" is malformed",
                    "1 to 64 lower-case letters, digits and hyphens are allowed");
              }
              return good;
            });
  }

  static Optional<List<Prerequisite>> after(Section section) {
    return section.texts("after").map(l -> l.stream().map(Prerequisite::parse).toList());
  }

  private boolean known(String kind) {
    if (!KINDS.contains(kind)) {
      section.fault("kind", "unknown kind \"" + kind + "\"", Nearest.hint(kind, KINDS));
    }
    return KINDS.contains(kind);
  }

  private Optional<String> prose(String key) {
    return section
        .text(key)
        .flatMap(t -> Written.checked(section, key, t, x -> Prose.lines(key, x, PROSE)));
  }

  private Optional<String> line(String key) {
    return section
        .text(key)
        .flatMap(t -> Written.checked(section, key, t, x -> Prose.line(key, x, PROSE)));
  }
}
