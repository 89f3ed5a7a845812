package witnessmark.procedure;

import java.util.Collections;
import java.util.Set;
import java.util.TreeSet;

/**
 * The smallest thing of a procedure that can be waited for: one pass of a tighten step over its
 * whole group, an attest step, or a measure step.
 *
 * @param number from 0, in file order, all passes of a step in order
 * @param step the step it belongs to
 * @param pass index into the tighten step's passes; 0 for an attest or measure step
 * @param requires numbers of the stages that must be complete first: what the file asks for, the
 *     pass before it, and the sequence; direct ones only
 * @param physical those of {@code requires} that the file lists under {@code after}, and the pass
 *     before it: undoing one of them undoes this stage, too; a mere sequence is not among them
 */
public record Stage(int number, Step step, int pass, Set<Integer> requires, Set<Integer> physical) {

  /**
   * @throws IllegalArgumentException when the pass does not exist, or something is physical that is
   *     not required
   */
  public Stage {
    requires = Collections.unmodifiableSet(new TreeSet<>(requires));
    physical = Collections.unmodifiableSet(new TreeSet<>(physical));
    int passes = step instanceof TightenStep t ? t.passes().size() : 1;
    if (pass < 0 || pass >= passes) {
      throw new IllegalArgumentException(
          "step " + step.id() + " has passes 0 to " + (passes - 1) + ", not " + pass);
    }
    if (!requires.containsAll(physical)) {
      throw new IllegalArgumentException("physical prerequisites must be among the required ones");
    }
  }

  /** {@code step:pass} for a tighten step, {@code step} for an attest or measure step. */
  public String key() {
    return step instanceof TightenStep t ? t.id() + ":" + t.passes().get(pass).name() : step.id();
  }
}
