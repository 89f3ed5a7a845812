package wrenchsim.shop;

import java.util.Objects;
import wrenchsim.wrench.Wrench;

/** A wrench within reach, with the radio in it. */
public final class Tool {
  private final Wrench wrench;
  private final Radio radio;

  /** A wrench in range; when it goes out of range follows from {@code seed}. */
  public Tool(Wrench wrench, long seed) {
    this.wrench = Objects.requireNonNull(wrench, "wrench");
    this.radio =
        new Radio(wrench.spec().life().store(), Chance.of(seed, "radio " + wrench.spec().serial()));
  }

  /** The wrench. */
  public Wrench wrench() {
    return wrench;
  }

  String serial() {
    return wrench.spec().serial();
  }

  Radio radio() {
    return radio;
  }
}
