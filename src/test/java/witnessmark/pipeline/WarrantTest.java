package witnessmark.pipeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import witnessmark.badge.PrivateHalf;
import witnessmark.desk.BindWrench;
import witnessmark.desk.Command;
import witnessmark.desk.Declined;
import witnessmark.desk.Dispose;
import witnessmark.desk.EnrolKey;
import witnessmark.desk.EnrolOperator;
import witnessmark.desk.EnrolWrench;
import witnessmark.desk.Release;
import witnessmark.desk.RetireWrench;
import witnessmark.desk.RuleCalibration;
import witnessmark.desk.WithdrawKey;
import witnessmark.entry.Disposition;
import witnessmark.entry.Role;
import witnessmark.entry.Signed;
import witnessmark.procedure.ProcedureFile;
import witnessmark.torque.WrenchKind;
import witnessmark.wrench.CalibrationRule;

/** Who must prove to be who. */
class WarrantTest {
  private static final PrivateHalf.Pair QUALITY = PrivateHalf.generate();
  private static final PrivateHalf.Pair OTHER = PrivateHalf.generate();
  private static final PrivateHalf.Pair THIRD = PrivateHalf.generate();
  private static final Optional<Pen> NONE = Optional.empty();

  private Bench bench;

  @BeforeEach
  void begin() {
    bench = Bench.on(Bench.group(2));
    bench.enrol("badge-11", Role.QUALITY);
    bench.enrol("badge-12", Role.TECHNICIAN);
    bench.enrol("badge-13", Role.TECHNICIAN);
  }

  private static Optional<Pen> pen(PrivateHalf.Pair pair) {
    return Optional.of(pair.privateHalf()::sign);
  }

  private static EnrolKey key(String badge, PrivateHalf.Pair pair, String by) {
    return new EnrolKey(badge, pair.publicHalf().base64(), by);
  }

  private void qualityHoldsAKey() {
    bench.decided(key("badge-11", QUALITY, "badge-11"), pen(QUALITY));
  }

  private boolean declined(Command command, Optional<Pen> pen) {
    long size = bench.size();
    try {
      bench.decided(command, pen);
      return false;
    } catch (Declined e) {
      assertThat(bench.size()).isEqualTo(size);
      return true;
    }
  }

  private static EnrolWrench wrench(Optional<String> by) {
    EnrolWrench w = Bench.wrench("TW-1");
    return new EnrolWrench(
        w.serial(),
        w.low(),
        w.high(),
        w.calibrated(),
        w.due(),
        w.certificate(),
        w.uncertainty(),
        by);
  }

  private static Release release(String revision, Optional<String> by) {
    String text = Bench.group(2).replace("\"A\"", "\"" + revision + "\"");
    return new Release(ProcedureFile.parse("test.toml", text), text, by);
  }

  private static RuleCalibration rule(Optional<String> by) {
    WrenchKind kind = WrenchKind.INDICATING;
    return new RuleCalibration(kind, CalibrationRule.usual(kind), by);
  }

  private static EnrolOperator enrol(String badge, Optional<String> by) {
    return new EnrolOperator(badge, Optional.empty(), List.of(), by);
  }

  /** Every decision there is, by that badge. */
  private static List<Command> all(String by, Random random) {
    Optional<String> badge = Optional.of(by);
    return new ArrayList<>(
        List.of(
            enrol("badge-2" + random.nextInt(10), badge),
            key("badge-13", THIRD, by),
            wrench(badge),
            new BindWrench("TW-1", List.of(), by),
            rule(badge),
            new RetireWrench("TW-1", by, "fell"),
            release("R" + random.nextInt(1000), badge)));
  }

  @Test
  void aBadgeWithAKeyDecidesNothingWithoutIt() {
    qualityHoldsAKey();
    Random random = new Random(11);
    for (Command command : all("badge-11", random)) {
      assertThat(declined(command, NONE)).as("without: %s", command).isTrue();
      assertThat(declined(command, pen(OTHER))).as("another's: %s", command).isTrue();
      assertThat(declined(command, pen(QUALITY))).as("its own: %s", command).isFalse();
    }
  }

  @Test
  void onceQualityHoldsAKeyABadgeWithoutDecidesWhatATechnicianMayAndNoMore() {
    qualityHoldsAKey();
    assertThat(declined(new RetireWrench("TW-1", "badge-12", "fell"), NONE)).isFalse();
    bench.decided(wrench(Optional.of("badge-11")), pen(QUALITY));
    bench.hit("70 N.m");
    String job = bench.jobName();
    assertThat(declined(new Dispose(job, "a/1", Disposition.SCRAP, "badge-07", "x"), NONE))
        .isTrue();
    assertThat(declined(new Dispose(job, "a/1", Disposition.REWORK, "badge-12", "x"), NONE))
        .isFalse();
    for (Optional<String> by : List.of(Optional.of("badge-12"), Optional.<String>empty())) {
      for (Command command :
          List.of(enrol("badge-20", by), wrench(by), rule(by), release("R", by))) {
        assertThat(declined(command, NONE)).as("%s", command).isTrue();
      }
    }
  }

  @Test
  void withoutKeysTheBadgeIsBelievedAsEver() {
    for (Command command : all("badge-12", new Random(1))) {
      boolean isKey = command instanceof EnrolKey;
      assertThat(declined(command, NONE)).as("%s", command).isEqualTo(isKey);
    }
  }

  @Test
  void onlyQualityEnrolsPeopleAndKeysOnceItHoldsOne() {
    bench.decided(key("badge-12", OTHER, "badge-12"), pen(OTHER));
    qualityHoldsAKey();
    assertThat(declined(enrol("badge-20", Optional.of("badge-12")), pen(OTHER))).isTrue();
    assertThat(declined(key("badge-12", THIRD, "badge-12"), pen(OTHER))).isTrue();
    assertThat(declined(key("badge-12", THIRD, "badge-11"), pen(QUALITY))).isFalse();
    assertThat(declined(wrench(Optional.of("badge-12")), pen(OTHER))).isTrue();
    assertThat(declined(wrench(Optional.of("badge-12")), pen(THIRD))).isFalse();
  }

  @Test
  void whoLostAKeyMaySaySoAndNobodyElseWithoutQuality() {
    bench.decided(key("badge-12", OTHER, "badge-12"), pen(OTHER));
    assertThat(declined(new WithdrawKey("badge-12", "badge-13", "x"), NONE)).isTrue();
    assertThat(declined(enrol("badge-12", Optional.of("badge-13")), NONE)).isTrue();
    qualityHoldsAKey();
    assertThat(declined(new WithdrawKey("badge-12", "badge-12", "lost"), pen(OTHER))).isFalse();
    assertThat(bench.shop().operators().get("badge-12").key()).isEmpty();
    assertThat(declined(wrench(Optional.of("badge-12")), pen(OTHER))).isTrue();
  }

  @Test
  void qualityIsNeverLeftWithoutAKey() {
    qualityHoldsAKey();
    WithdrawKey last = new WithdrawKey("badge-11", "badge-11", "x");
    EnrolOperator less =
        new EnrolOperator(
            "badge-11", Optional.empty(), List.of(Role.TECHNICIAN), Optional.of("badge-11"));
    assertThat(declined(last, pen(QUALITY))).isTrue();
    assertThat(declined(less, pen(QUALITY))).isTrue();
    bench.decided(key("badge-07", OTHER, "badge-11"), pen(QUALITY));
    assertThat(declined(less, pen(QUALITY))).isFalse();
    assertThatThrownBy(
            () -> bench.decided(new WithdrawKey("badge-07", "badge-07", "x"), pen(OTHER)))
        .hasMessageStartingWith("badge-07 holds the only key of quality");
  }

  @Test
  void aKeyOfQualityIsReplacedByAnotherOneThatIsKnownToWork() {
    qualityHoldsAKey();
    assertThat(declined(key("badge-11", THIRD, "badge-11"), pen(QUALITY))).isTrue();
    bench.decided(
        new EnrolOperator(
            "badge-14", Optional.empty(), List.of(Role.QUALITY), Optional.of("badge-11")),
        pen(QUALITY));
    bench.decided(key("badge-14", OTHER, "badge-11"), pen(QUALITY));
    assertThat(declined(key("badge-11", THIRD, "badge-11"), pen(QUALITY))).isTrue();
    assertThat(declined(key("badge-11", THIRD, "badge-14"), pen(OTHER))).isFalse();
  }

  @Test
  void aNewNameKeepsTheKeyAndTheEntryNamesIt() {
    long enrolled = bench.size();
    qualityHoldsAKey();
    byte[] bytes = bench.decided(enrol("badge-11", Optional.of("badge-11")), pen(QUALITY)).get(0);
    assertThat(Signed.key(bytes)).hasValue(enrolled);
    assertThat(bench.shop().operators().get("badge-11").key().orElseThrow().entry())
        .isEqualTo(enrolled);
    assertThat(bench.replayed().operators()).isEqualTo(bench.shop().operators());
  }
}
