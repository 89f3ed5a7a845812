package witnessmark.procedure;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.procedure.Draft.DraftPass;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;
import witnessmark.torque.AngleBand;

/** Reads what a tighten step has beside the head of every step. */
final class TightenReader {
  static final int PASSES = 20;
  private static final List<String> CRITICALITIES =
      Stream.of(Criticality.values()).map(Criticality::code).toList();

  private final Section section;
  private final StepReader.Head head;

  TightenReader(Section section, StepReader.Head head) {
    this.section = section;
    this.head = head;
  }

  Draft read() {
    String id = head.id().orElse("");
    GroupReader group = new GroupReader(section, id);
    List<String> positions = group.positions();
    Optional<Order> order = group.order(positions.size());
    List<DraftPass> passes = passes(id, positions.size());
    Joint joint = new Joint(label("thread"), label("property-class"), label("surface"));
    List<String> wrenches =
        section.has("wrenches") ? StepReader.labels(section, "wrenches", "wrench") : List.of();
    Optional<Criticality> criticality = criticality();
    Care care = new CareReader(section).read();
    Optional<Step> step = Optional.empty();
    boolean whole = passes.stream().allMatch(p -> p.pass().isPresent());
    if (head.complete()
        && !positions.isEmpty()
        && order.isPresent()
        && whole
        && criticality.isPresent()) {
      step =
          Optional.of(
              new TightenStep(
                  id,
                  head.title().get(),
                  head.after(),
                  positions,
                  order.get(),
                  passes.stream().map(p -> p.pass().get()).toList(),
                  joint,
                  wrenches,
                  criticality.get(),
                  care,
                  head.note(),
                  head.picture()));
    }
    return new Draft(section, id, Optional.of("tighten"), head.after(), passes, step);
  }

  /**
   * @param count of the group's fasteners; 0 where it is not known
   */
  private List<DraftPass> passes(String id, int count) {
    List<Section> sections = section.sections("pass");
    if (!section.has("pass")) {
      BandReader reader = new BandReader(section, "step \"" + id + "\"");
      return List.of(pass(section, reader, "final", List.of(), false, Own.NONE));
    }
    if (BandReader.any(section)) {
      section.fault(
          "pass",
          "step \"" + id + "\" has torque or angle of its own and passes",
          "move torque, tolerance, min, max, angle-min and angle-max into the passes");
    }
    if (sections.size() > PASSES) {
      section.fault(
          "pass",
          "step \"" + id + "\" has " + sections.size() + " passes",
          "at most " + PASSES + " are allowed");
    }
    List<DraftPass> passes = new ArrayList<>();
    Map<String, Integer> lines = new HashMap<>();
    for (Section s : sections) {
      Optional<String> name = StepReader.id(s, "name", "pass");
      Integer first = name.map(n -> lines.putIfAbsent(n, s.line("name"))).orElse(null);
      if (first != null) {
        s.fault(
            "name",
            "pass name \"" + name.get() + "\" is used twice in a step, first on line " + first,
            "give each pass a name of its own");
      }
      String owner = "pass \"" + name.orElse("") + "\"";
      List<Prerequisite> after = StepReader.after(s).orElse(List.of());
      boolean check = s.bool("check").orElse(false);
      if (passes.isEmpty() && check) {
        s.fault("check", owner + " checks, but nothing is tight before it", "put it last");
      }
      passes.add(pass(s, new BandReader(s, owner), name.orElse(""), after, check, own(s, count)));
      s.finish();
    }
    return passes.isEmpty() ? List.of(nothing()) : passes;
  }

  /** The order that a pass has of its own: none where it says nothing of one. */
  private static Own own(Section s, int count) {
    if (!s.has("order") && !s.has("pattern")) {
      return Own.NONE;
    }
    Optional<Order> order = new GroupReader(s, "").order(count);
    return new Own(order, order.isPresent());
  }

  /**
   * @param good whether nothing about it was faulty
   */
  private record Own(Optional<Order> order, boolean good) {
    static final Own NONE = new Own(Optional.empty(), true);
  }

  /** Stands for the passes of a step whose {@code pass} is no list of tables or an empty one. */
  private DraftPass nothing() {
    section.fault("pass", "pass holds no pass", "write passes as [[step.pass]]");
    return new DraftPass(section, "final", List.of(), Optional.empty());
  }

  private DraftPass pass(
      Section s, BandReader reader, String name, List<Prerequisite> after, boolean check, Own own) {
    Optional<BandReader.Asked> asked = reader.torque();
    Optional<AngleBand> angle = reader.angle();
    Optional<Pass> pass =
        asked.map(a -> new Pass(name, a.target(), a.band(), angle, after, check, own.order()));
    return new DraftPass(s, name, after, pass.filter(p -> own.good()));
  }

  private Optional<String> label(String key) {
    return section.text(key).flatMap(t -> Written.label(section, key, key, t));
  }

  private Optional<Criticality> criticality() {
    if (!section.has("criticality")) {
      return Optional.of(Criticality.FUNCTION);
    }
    Optional<String> word = section.text("criticality");
    if (word.isPresent() && !CRITICALITIES.contains(word.get())) {
      section.fault(
          "criticality",
          "unknown criticality \"" + word.get() + "\"",
          Nearest.hint(word.get(), CRITICALITIES));
      return Optional.empty();
    }
    return word.map(w -> Criticality.valueOf(w.toUpperCase(Locale.ROOT)));
  }
}
