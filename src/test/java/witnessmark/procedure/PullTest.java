package witnessmark.procedure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import witnessmark.torque.Adapter;
import witnessmark.torque.Angle;
import witnessmark.torque.Band;
import witnessmark.torque.Length;
import witnessmark.torque.Side;
import witnessmark.torque.Torque;

class PullTest {
  private static final Adapter ADAPTER =
      new Adapter(Length.parse("350 mm"), Length.parse("40 mm"), Angle.of("0"));

  private static Pass pass(Optional<Torque> target, String low, String high) {
    Band band = new Band(Torque.parse(low), Torque.parse(high));
    return new Pass("final", target, band, Optional.empty(), List.of(), false);
  }

  @Test
  void whoPullsToALimitStaysWithinTheBand() {
    Pass pass = pass(Optional.of(Torque.parse("50 N.m")), "45 N.m", "55 N.m");
    Pull pull = Pull.of(pass, ADAPTER);
    assertThat(pull).isEqualTo(new Pull(Optional.of("44.872"), "40.385", "49.358"));
    for (String limit : List.of(pull.low(), pull.high())) {
      assertThat(ADAPTER.side(pass.band(), Torque.parse(limit + " N.m"))).isEqualTo(Side.INSIDE);
    }
    assertThat(ADAPTER.side(pass.band(), Torque.parse("40.384 N.m"))).isEqualTo(Side.BELOW);
    assertThat(ADAPTER.side(pass.band(), Torque.parse("49.359 N.m"))).isEqualTo(Side.ABOVE);
  }

  @Test
  void eachLimitIsInItsOwnUnit() {
    Pass pass = pass(Optional.empty(), "40 N.m", "45 lbf.ft");
    assertThat(Pull.of(pass, ADAPTER)).isEqualTo(new Pull(Optional.empty(), "35.898", "40.384"));
  }

  @Test
  void aNarrowBandHasAsManyDigitsAsItNeeds() {
    Pass pass = pass(Optional.empty(), "45 N.m", "45.0001 N.m");
    Pull pull = Pull.of(pass, ADAPTER);
    assertThat(pull).isEqualTo(new Pull(Optional.empty(), "40.3847", "40.3847"));
    assertThat(ADAPTER.side(pass.band(), Torque.parse(pull.low() + " N.m"))).isEqualTo(Side.INSIDE);
    assertThat(ADAPTER.side(pass.band(), Torque.parse(pull.high() + " N.m")))
        .isEqualTo(Side.INSIDE);
  }
}
