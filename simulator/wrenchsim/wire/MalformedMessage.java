package wrenchsim.wire;

/** A message of the bridge that is not what docs/messages.md says. */
public final class MalformedMessage extends Exception {
  private static final long serialVersionUID = 1L;

  public MalformedMessage(String message) {
    super(message);
  }
}
