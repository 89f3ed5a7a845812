package witnessmark.trial;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import witnessmark.desk.Command;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.entry.Role;
import witnessmark.torque.Digits;
import witnessmark.torque.Torque;

/** Who and what is enrolled at the trial's bench. */
final class Crew {
  static final String QUALITY = "badge-02";

  private Crew() {}

  static List<Command> enrol(Scene scene) {
    List<Command> all = new ArrayList<>();
    all.add(new EnrolOperator("badge-07", "bench", Optional.empty()));
    all.add(
        new EnrolOperator(
            QUALITY, Optional.of("quality"), List.of(Role.QUALITY), Optional.empty()));
    scene.wrenches().stream()
        .filter(w -> scene.enrolled().contains(w.serial()))
        .forEach(
            w ->
                all.add(
                    new EnrolWrench(
                        w.serial(),
                        Torque.parse(w.gauge().min().toPlainString() + " N.m"),
                        Torque.parse(w.gauge().max().toPlainString() + " N.m"),
                        Instant.parse("2026-09-01T00:00:00Z"),
                        Instant.parse("2027-09-01T00:00:00Z"),
                        Optional.empty(),
                        Optional.of(new Digits("2")),
                        Optional.empty())));
    return all;
  }
}
