package wrenchsim.joint;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class JointTest {
  private static final int SEEDS = 500;
  private static final JointSpec HARD = new JointSpec(33, 29.7, 36.3, JointSpec.HARD, 0.05);
  private static final JointSpec SOFT = new JointSpec(33, 29.7, 36.3, JointSpec.SOFT, 0.05);

  private static Joint joint(JointSpec spec, long seed) {
    // Random's first values are alike for alike seeds.
    return new Joint(spec, new Random(new SplittableRandom(seed).nextLong()));
  }

  @Test
  void aLooseJointTurnsAboutItsHardness() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Turn hard = joint(HARD, seed).tighten(33);
      Turn soft = joint(SOFT, seed).tighten(33);
      assertThat(hard.degrees()).as("seed %d", seed).isCloseTo(30, within(30 * 0.15));
      assertThat(soft.degrees()).as("seed %d", seed).isCloseTo(360, within(360 * 0.15));
      assertThat(hard.peakNm()).as("seed %d", seed).isEqualTo(33);
      assertThat(hard.before()).isEqualTo(JointState.LOOSE);
      assertThat(hard.after()).isEqualTo(JointState.TIGHT);
    }
  }

  @Test
  void aTightJointHitAgainTurnsAFewDegreesAndShowsWhereItBrokeAway() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Joint joint = joint(HARD, seed);
      double first = joint.tighten(33).degrees();
      Turn again = joint.tighten(33);
      assertThat(again.degrees()).as("seed %d", seed).isBetween(0.0, 3.0).isLessThan(first / 7);
      assertThat(again.peakNm()).as("seed %d", seed).isBetween(33 * 1.01, 33 * 1.1);
      assertThat(again.after()).as("seed %d", seed).isEqualTo(JointState.TIGHT);
    }
  }

  @Test
  void theAngleOfASecondHitHasTheMeanAndDeviationAskedForAndIsNeverNegative() {
    for (double[] asked : new double[][] {{1.5, 0.5}, {8, 2}, {0, 0}}) {
      JointSpec spec =
          new JointSpec(33, 29.7, 36.3, JointSpec.HARD, 0.05, new Rehit(asked[0], asked[1]));
      double sum = 0;
      double squares = 0;
      for (long seed = 0; seed < SEEDS; seed++) {
        Joint joint = joint(spec, seed);
        joint.tighten(33);
        double turned = joint.tighten(33).degrees();
        assertThat(turned).as("seed %d", seed).isNotNegative();
        sum += turned;
        squares += turned * turned;
      }
      double mean = sum / SEEDS;
      // Four standard errors of a mean and of a deviation over so many draws.
      double margin = 4 * asked[1] / Math.sqrt(SEEDS);
      assertThat(mean).isCloseTo(asked[0], within(margin + 1e-9));
      assertThat(Math.sqrt(Math.max(0, squares / SEEDS - mean * mean)))
          .isCloseTo(asked[1], within(margin + 1e-6));
    }
  }

  @Test
  void crossedThreadsBindAfterAThirdOfTheAngleUntilTheyAreUndone() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Joint joint = joint(HARD, seed);
      Turn bound = joint.bind(33);
      assertThat(bound.degrees()).as("seed %d", seed).isCloseTo(10, within(10 * 0.15 + 1e-9));
      assertThat(bound.peakNm()).isEqualTo(33);
      assertThat(bound.after()).isEqualTo(JointState.CROSSED);
      assertThat(joint.tighten(33).after()).isEqualTo(JointState.CROSSED);
      joint.loosen();
      assertThat(joint.tighten(33).after()).isEqualTo(JointState.TIGHT);
      assertThat(joint.bind(33).after())
          .as("what is tight already cannot cross")
          .isEqualTo(JointState.TIGHT);
    }
  }

  @Test
  void aHandFeelsWhatIsLooseForItsPassButNotWhatIsALittleUnder() {
    Joint joint = joint(new JointSpec(15, 12, 18, 30, 0.05), 3);
    assertThat(joint.isSlack()).isTrue();
    joint.tighten(9);
    assertThat(joint.isSlack()).isFalse();
    joint.face(new JointSpec(90, 85, 95, 40, 0.05));
    assertThat(joint.isSlack()).isTrue();
    joint.tighten(70);
    assertThat(joint.isSlack()).isFalse();
  }

  @Test
  void aLoosenedJointTightensLikeTheFirstTime() {
    double first = 0;
    double second = 0;
    for (long seed = 0; seed < SEEDS; seed++) {
      Joint joint = joint(HARD, seed);
      first += joint.tighten(33).degrees();
      Turn undone = joint.loosen();
      assertThat(undone.after()).as("seed %d", seed).isEqualTo(JointState.LOOSENED);
      assertThat(undone.tightening()).isFalse();
      assertThat(undone.peakNm()).as("seed %d", seed).isBetween(0.6 * 33, 0.95 * 33);
      Turn retightened = joint.tighten(33);
      assertThat(retightened.before()).isEqualTo(JointState.LOOSENED);
      assertThat(retightened.degrees()).as("seed %d", seed).isCloseTo(30, within(30 * 0.15));
      second += retightened.degrees();
    }
    assertThat(second / SEEDS).isCloseTo(first / SEEDS, within(0.5));
  }

  @Test
  void anUnderTightenedJointTurnsOnlyTheRest() {
    for (long seed = 0; seed < SEEDS; seed++) {
      Joint joint = joint(HARD, seed);
      Turn under = joint.tighten(22);
      assertThat(under.after()).isEqualTo(JointState.SNUG);
      Turn rest = joint.tighten(33);
      // The rest of the straight line, its scatter, and at most three degrees of wind-up.
      double straight = HARD.degreesBetween(22, 33);
      assertThat(rest.degrees())
          .as("seed %d", seed)
          .isBetween(straight * 0.84, straight * 1.16 + 3);
      assertThat(rest.after()).isEqualTo(JointState.TIGHT);
    }
  }

  @Test
  void moreTorqueNeverTurnsALooseJointLess() {
    for (long seed = 0; seed < SEEDS; seed++) {
      double last = 0;
      for (double torque = 4; torque < 60; torque += 4) {
        double turned = joint(SOFT, seed).tighten(torque).degrees();
        assertThat(turned).as("seed %d, %s N.m", seed, torque).isGreaterThan(last);
        last = turned;
      }
    }
  }

  @Test
  void pullingThroughTheBandOvertightensAndNothingButUndoingMakesItGood() {
    Joint joint = joint(HARD, 7);
    assertThat(joint.tighten(41).after()).isEqualTo(JointState.OVERTIGHTENED);
    assertThat(joint.tighten(33).after()).isEqualTo(JointState.OVERTIGHTENED);
    joint.loosen();
    assertThat(joint.tighten(33).after()).isEqualTo(JointState.TIGHT);
  }

  @Test
  void aLaterPassWithAHigherTargetTurnsTheJointOn() {
    Joint joint = joint(new JointSpec(15, 12, 18, 30, 0.05), 3);
    joint.tighten(15);
    assertThat(joint.state()).isEqualTo(JointState.TIGHT);
    joint.face(new JointSpec(90, 85, 95, 40, 0.05));
    assertThat(joint.state()).isEqualTo(JointState.SNUG);
    assertThat(joint.tighten(90).degrees()).isBetween(30.0, 45.0);
    joint.face(new JointSpec(15, 12, 18, 30, 0.05));
    assertThat(joint.state()).isEqualTo(JointState.TIGHT);
  }

  @Test
  void thereIsNothingToUndoOnALooseJoint() {
    assertThatThrownBy(() -> joint(HARD, 1).loosen())
        .isInstanceOf(IllegalStateException.class)
        .hasMessage("the joint is loose: there is nothing to undo");
  }

  @Test
  void aJointWithoutASaneBandIsRefused() {
    assertThatThrownBy(() -> new JointSpec(33, 34, 36, 30, 0.05))
        .hasMessage(
            "a joint needs 0 < low <= target <= high in N.m, but got low 34.0, target 33.0, high 36.0");
    assertThatThrownBy(() -> new JointSpec(33, 30, 36, 0, 0.05))
        .hasMessage("the angle from snug to target must be above 0 degrees, but is 0.0");
    assertThatThrownBy(() -> new JointSpec(33, 30, 36, 30, 0.4))
        .hasMessage("the scatter of a joint must be 0 to 0.3, but is 0.4");
    assertThatThrownBy(() -> new Rehit(-1, 0))
        .hasMessage(
            "the angle of a second hit has a mean and a deviation of 0 to 90 degrees, but got -1.0 and 0.0");
  }
}
