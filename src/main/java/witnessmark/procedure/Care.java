package witnessmark.procedure;

import java.util.Objects;

/**
 * What binds the work on a tighten step beside its torque.
 *
 * @param telling how a second hit is told from the next fastener
 * @param tool what the wrench must be, and what sits between it and the fastener
 * @param rework what may follow a bad tightening
 */
public record Care(Telling telling, Tool tool, Rework rework) {
  /** What holds where a step says nothing. */
  public static final Care USUAL = new Care(Telling.USUAL, Tool.ANY, Rework.USUAL);

  public Care {
    Objects.requireNonNull(telling, "telling");
    Objects.requireNonNull(tool, "tool");
    Objects.requireNonNull(rework, "rework");
  }
}
