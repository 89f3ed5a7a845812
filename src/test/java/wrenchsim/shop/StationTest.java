package wrenchsim.shop;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import wrenchsim.PaperBridge;
import wrenchsim.joint.JointState;
import wrenchsim.shop.Mistake.Kind;
import wrenchsim.truth.Happening;
import wrenchsim.truth.Happening.Act;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wrench.Store;

/** A person in one process with a bridge on paper: bytes in, bytes out, no wire, no waiting. */
class StationTest {
  private static final String[] FOUR = {"hub/1", "hub/2", "hub/3", "hub/4"};
  private static final String[] TWO_GROUPS = {"hub/1", "hub/2", "pivot/1", "pivot/2"};

  private static Benchwork oneWrench(long seed) {
    return new Benchwork(seed).tool("TW-0417");
  }

  private static Optional<Store> store(int readings, double away, double twice, double half) {
    return Optional.of(new Store(readings, away, twice, half));
  }

  private static List<String> mistakes(Benchwork work) {
    return work.truth.stream().flatMap(h -> h.mistake().stream()).toList();
  }

  @Test
  void aJobIsDoneAndEveryVerdictLeadsToWhatItIsAbout() throws Exception {
    PaperBridge bridge = new PaperBridge(FOUR);
    Benchwork work = oneWrench(1).work(bridge);
    assertThat(bridge.isComplete()).isTrue();
    assertThat(work.places()).containsExactly(FOUR);
    assertThat(work.judged).isEqualTo(work.truth);
    assertThat(work.sent.get(0)).startsWith("{\"wrench\":\"TW-0417\",\"event\":1,");
    assertThat(work.parts().states("ATR-26-0147").values())
        .hasSize(4)
        .containsOnly(JointState.TIGHT);
    work.station().ship("ATR-26-0147");
    assertThat(work.parts().states("ATR-26-0147")).isEmpty();
  }

  @Test
  void theSameSeedSendsTheSameBytesAndTellsTheSameTruthWhateverGoesWrong() throws Exception {
    for (long seed = 1; seed <= 20; seed++) {
      assertThat(everything(seed).sent).as("seed %d", seed).isEqualTo(everything(seed).sent);
      assertThat(everything(seed).lines()).as("seed %d", seed).isEqualTo(everything(seed).lines());
      assertThat(everything(seed).sent).isNotEqualTo(everything(seed + 100).sent);
    }
  }

  private static Benchwork everything(long seed) throws Exception {
    Benchwork work = new Benchwork(seed).tool("TW-0417", Optional.of(1L), store(3, 0.2, 0.5, 0.5));
    work.tool("TW-0502").habits(new Habits(true, false, true));
    for (Kind kind : Kind.values()) {
      work.rate(kind, 0.05);
    }
    PaperBridge bridge = new PaperBridge(TWO_GROUPS).only("pivot/1", "TW-0502");
    for (int job = 1; job <= 10; job++) {
      bridge.next(job);
      work.work(bridge);
    }
    return work;
  }

  @Test
  void whateverIsSkippedOrHitTwiceIsFoundByHandOnceTheBridgeRecognisesTheSecondHit()
      throws Exception {
    for (boolean any : new boolean[] {false, true}) {
      PaperBridge bridge = any ? new PaperBridge(FOUR).anyOrder() : new PaperBridge(FOUR);
      // Up to 3 degrees of wind-up, and what a second pull with a tenth more torque turns.
      bridge.leastAngle(9);
      Benchwork work =
          oneWrench(any ? 2 : 1)
              .rate(Kind.SKIP, 0.1)
              .rate(Kind.DOUBLE, 0.1)
              .habits(new Habits(any, false, false));
      for (int job = 1; job <= 300; job++) {
        bridge.next(job);
        work.work(bridge);
        assertThat(bridge.isComplete()).as("job %d, any order: %s", job, any).isTrue();
        assertThat(work.parts().states(bridge.unit()).values())
            .as("job %d, any order: %s", job, any)
            .hasSize(4)
            .containsOnly(JointState.TIGHT);
        work.station().ship(bridge.unit());
      }
      assertThat(mistakes(work)).contains("skip", "double");
      assertThat(work.warnings).isEmpty();
    }
  }

  @Test
  void whereTheOrderIsFreeAPersonKnowsWhatTheyDidAndGoesOnWithWhatTheyBegan() throws Exception {
    for (long seed = 1; seed <= 30; seed++) {
      Benchwork work = oneWrench(seed).habits(new Habits(true, false, false));
      work.mistake("hub/2", "under").work(new PaperBridge(FOUR).anyOrder());
      int begun = work.places().indexOf("hub/2");
      assertThat(work.places()).as("seed %d", seed).hasSize(5).contains(FOUR);
      assertThat(work.places().get(begun + 1)).as("seed %d", seed).isEqualTo("hub/2");
      assertThat(work.truth.get(begun + 1).turn().after()).isEqualTo(JointState.TIGHT);
    }
  }

  @Test
  void theLastOfAGroupIsSkippedForTheOneBeforeOnceTheSheetIsKnown() throws Exception {
    Benchwork work = oneWrench(1).mistake("hub/4", "skip");
    byte[] all = new PaperBridge(FOUR).anyOrder().expect(true);
    work.sheets.give("RAM-210 C", ExpectMessage.read(all).expect());
    work.work(new PaperBridge(FOUR));
    assertThat(work.places()).containsExactly("hub/1", "hub/2", "hub/3", "hub/3", "hub/4");
    assertThat(work.truth.get(3).work().expected()).contains("hub/4");
    assertThat(work.truth.get(3).mistake()).contains("skip");
  }

  @Test
  void aSecondHitCountsForWhatIsExpectedByThen() throws Exception {
    Benchwork work = oneWrench(1).mistake("hub/2", "double").work(new PaperBridge(FOUR));
    assertThat(work.places()).containsExactly("hub/1", "hub/2", "hub/2", "hub/3", "hub/4");
    assertThat(work.truth.get(2).work().expected()).contains("hub/3");
    assertThat(work.truth.get(2).turn().before()).isEqualTo(JointState.TIGHT);
  }

  @Test
  void whatNobodyFindsLooseIsUndoneAndDoneAgain() throws Exception {
    // A bridge that lost a credit: the fastener is tight, and expected all the same.
    Benchwork work = oneWrench(1).work(new PaperBridge("hub/1"));
    work.truth.clear();
    PaperBridge forgetful = new PaperBridge("hub/1");
    work.work(forgetful);
    assertThat(forgetful.isComplete()).isTrue();
    assertThat(work.truth.stream().map(Happening::act))
        .containsExactly(Act.TIGHTEN, Act.TIGHTEN, Act.LOOSEN, Act.TIGHTEN);
  }

  @Test
  void aWrongFastenerIsOneOfAnotherGroupWithItsOwnBand() throws Exception {
    Benchwork work = oneWrench(3).mistake("hub/2", "wrong");
    work.sheets.give("RAM-210 C", ExpectMessage.read(twoGroups()).expect());
    work.work(new PaperBridge(TWO_GROUPS));
    Happening wrong = work.truth.get(1);
    assertThat(wrong.mistake()).contains("wrong");
    assertThat(wrong.work().expected()).contains("hub/2");
    assertThat(wrong.work().fastener().orElseThrow()).startsWith("pivot/");
    assertThat(wrong.turn().after()).isEqualTo(JointState.TIGHT);
    Benchwork unknown = oneWrench(3).mistake("hub/2", "wrong").work(new PaperBridge(TWO_GROUPS));
    assertThat(mistakes(unknown)).isEmpty();
    assertThat(unknown.warnings)
        .containsExactly(
            "hub/2 is done right, without the mistake 'wrong': no fastener of another group is known; name one with wrong:FASTENER");
    Benchwork named =
        oneWrench(3).mistake("hub/2", "wrong:pivot/2").work(new PaperBridge(TWO_GROUPS));
    assertThat(named.places().get(1)).isEqualTo("pivot/2");
  }

  private static byte[] twoGroups() {
    return new PaperBridge(TWO_GROUPS).anyOrder().expect(true);
  }

  @Test
  void aWrongToolIsOneThatMustNotBeUsedThere() throws Exception {
    PaperBridge bridge = new PaperBridge(FOUR).only("hub/2", "TW-0417");
    Benchwork work = oneWrench(1).tool("TW-0502").mistake("hub/2", "wrongtool").work(bridge);
    assertThat(work.truth.stream().map(h -> h.reading().wrench())).startsWith("TW-0417", "TW-0502");
    assertThat(work.truth.get(1).mistake()).contains("wrongtool");
    Benchwork free =
        oneWrench(1).tool("TW-0502").mistake("hub/3", "wrongtool").work(new PaperBridge(FOUR));
    assertThat(free.warnings)
        .containsExactly(
            "hub/3 is done right, without the mistake 'wrongtool': every wrench here that reaches it may be used there");
  }

  @Test
  void aCrossedFastenerHoldsItsTorqueAfterAThirdOfTheAngle() throws Exception {
    Benchwork work = oneWrench(1).mistake("hub/2", "cross").work(new PaperBridge(FOUR));
    assertThat(work.truth.get(1).turn().after()).isEqualTo(JointState.CROSSED);
    assertThat(work.truth.get(1).turn().degrees()).isBetween(35.0 / 4, 35.0 / 2);
    assertThat(work.parts().states("ATR-26-0147")).containsEntry("hub/2", JointState.CROSSED);
  }

  @Test
  void outOfRangeAPersonGoesOnByMemoryAndTheWrenchDeliversAllAtOnce() throws Exception {
    PaperBridge bridge = new PaperBridge(FOUR).anyOrder();
    Benchwork work = new Benchwork(1).tool("TW-0417", Optional.of(1L), store(3, 1, 1, 1));
    work.work(bridge);
    assertThat(bridge.isComplete()).isTrue();
    assertThat(work.sent.stream().map(StationTest::events))
        .containsExactly(
            List.of(1, 2, 3), List.of(1, 2, 3), List.of(2, 3), List.of(4), List.of(4), List.of(4));
    assertThat(bridge.repeats()).isEqualTo(7);
    assertThat(work.judged).hasSize(4).allMatch(Happening::stored);
    assertThat(work.truth.stream().filter(h -> h.act() == Act.REDELIVER)).hasSize(7);
    assertThat(work.lines().get(0)).endsWith(",\"stored\":true}");
  }

  @Test
  void whatIsNotKnownYetIsNotDoneByMemory() throws Exception {
    PaperBridge bridge = new PaperBridge(FOUR);
    Benchwork work = new Benchwork(1).tool("TW-0417", Optional.of(1L), store(3, 1, 0, 0));
    work.work(bridge);
    assertThat(work.sent).hasSize(4);
    bridge.next(2);
    work.work(bridge);
    assertThat(work.sent.stream().skip(4).map(StationTest::events))
        .as("the second job is known by heart")
        .containsExactly(List.of(5, 6, 7), List.of(8));
  }

  @Test
  void aWrenchThatDoesNotCountIsToldByItsTorque() throws Exception {
    Benchwork work = new Benchwork(1).tool("TW-0417", Optional.empty(), Optional.empty());
    work.mistake("hub/2", "under").work(new PaperBridge(FOUR));
    assertThat(work.judged).isEqualTo(work.truth).hasSize(5);
    assertThat(work.sent.get(0)).doesNotContain("event");
  }

  @Test
  void whoScansScansTheLabelOfThePlaceTheyAreReallyAt() throws Exception {
    Benchwork work = oneWrench(1).habits(new Habits(false, false, true)).mistake("hub/2", "skip");
    work.work(new PaperBridge(FOUR));
    List<String> labels =
        work.sent.stream()
            .filter(s -> s.startsWith("{\"scan\""))
            .map(s -> s.replaceAll(".*:\"(.*)\"}", "$1"))
            .toList();
    assertThat(labels).isEqualTo(work.places());
    assertThat(labels.get(1)).isEqualTo("hub/3");
  }

  @Test
  void whatIsAskedIsAnsweredTruthfullyAndOnce() throws Exception {
    Station station = oneWrench(1).mistake("hub/1", "skip").station();
    station.hearExpect(new PaperBridge(FOUR).expect(true));
    station.act().orElseThrow();
    Optional<Happening> about = station.hearVerdict(verdict(57, "asks"));
    assertThat(about.orElseThrow().work().fastener()).contains("hub/2");
    assertThat(station.answers()).containsExactly(new Answer(57, "hub/2"));
    assertThat(station.answers()).isEmpty();
    station.hearExpect("{\"state\":\"answer\",\"expect\":[{\"entry\":57}]}".getBytes(UTF_8));
    assertThat(station.act()).as("an answer is no work for a wrench").isEmpty();
    assertThat(
            station.hearVerdict(
                "{\"data\":{\"entry\":58,\"assigns\":57,\"effect\":\"credited\"}}".getBytes(UTF_8)))
        .as("the later verdict is on the same hit")
        .isEqualTo(about);
    assertThat(station.hearVerdict(verdict(59, "credited"))).as("somebody else's").isEmpty();
  }

  private static byte[] verdict(long entry, String effect) {
    return "{\"data\":{\"entry\":%d,\"wrench\":\"TW-0417\",\"event\":1,\"effect\":\"%s\"}}"
        .formatted(entry, effect)
        .getBytes(UTF_8);
  }

  private static List<Integer> events(String message) {
    assertThat(message).startsWith("[").endsWith("]");
    return IntStream.range(1, message.split("\"event\":").length)
        .mapToObj(i -> message.split("\"event\":")[i].replaceAll(",.*", ""))
        .map(Integer::valueOf)
        .toList();
  }

  @Test
  void everyKindOfMistakeComesAboutAsOftenAsAskedFor() {
    Map<Kind, Double> rates = new EnumMap<>(Kind.class);
    int kinds = Kind.values().length;
    for (Kind kind : Kind.values()) {
      rates.put(kind, 0.5 * (kind.ordinal() + 1) / (kinds * (kinds + 1) / 2));
    }
    Mistakes mistakes = new Mistakes(rates, Chance.of(1, "mistakes"));
    int visits = 50_000;
    Map<Kind, Long> made =
        IntStream.range(0, visits)
            .mapToObj(n -> mistakes.next("hub/1"))
            .flatMap(Optional::stream)
            .collect(Collectors.groupingBy(Mistake::kind, Collectors.counting()));
    assertThat(made.keySet()).isEqualTo(Set.of(Kind.values()));
    rates.forEach(
        (kind, rate) ->
            // Four standard deviations of a binomial count.
            assertThat((double) made.get(kind))
                .as(kind.word())
                .isBetween(
                    visits * rate - 4 * Math.sqrt(visits * rate),
                    visits * rate + 4 * Math.sqrt(visits * rate)));
  }
}
