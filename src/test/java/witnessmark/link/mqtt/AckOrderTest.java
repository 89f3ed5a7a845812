package witnessmark.link.mqtt;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class AckOrderTest {
  private final List<Integer> sent = new ArrayList<>();
  private final AckOrder acks = new AckOrder(sent::add);

  @Test
  void holdsAnAcknowledgementBackUntilEarlierOnesAreGiven() {
    Runnable first = acks.owe(1);
    Runnable second = acks.owe(2);
    Runnable third = acks.owe(3);
    second.run();
    assertThat(sent).isEmpty();
    first.run();
    assertThat(sent).containsExactly(1, 2);
    third.run();
    assertThat(sent).containsExactly(1, 2, 3);
    assertThat(acks.open()).isZero();
  }

  @Test
  void sendsInReceiveOrderWhateverOrderTheyAreGivenIn() {
    for (int seed = 0; seed < 500; seed++) {
      sent.clear();
      List<Runnable> given = new ArrayList<>();
      List<Integer> received = new ArrayList<>();
      Random random = new Random(seed);
      for (int i = 0; i < 40; i++) {
        int id = 1 + random.nextInt(65535);
        received.add(id);
        given.add(acks.owe(id));
      }
      Collections.shuffle(given, random);
      given.forEach(Runnable::run);
      assertThat(sent).as("seed %d", seed).isEqualTo(received);
    }
  }

  @Test
  void sendsOnceWhatIsAcknowledgedTwice() {
    Runnable first = acks.owe(7);
    first.run();
    first.run();
    Runnable sameIdAgain = acks.owe(7);
    first.run();
    assertThat(sent).containsExactly(7);
    sameIdAgain.run();
    assertThat(sent).containsExactly(7, 7);
  }

  @Test
  void aMessageThatWasNotTakenHoldsNothingBack() {
    Runnable first = acks.owe(1);
    acks.owe(2);
    acks.disown();
    Runnable third = acks.owe(3);
    third.run();
    first.run();
    assertThat(sent).containsExactly(1, 3);
  }

  @Test
  void sendsNothingAfterTheConnectionEnded() {
    Runnable first = acks.owe(1);
    acks.end();
    first.run();
    acks.owe(2).run();
    assertThat(sent).isEmpty();
  }
}
