package wrenchsim.wire;

import java.io.IOException;

/** A broker or a serial line that cannot be reached; the message says where and what to do. */
public final class LinkException extends IOException {
  private static final long serialVersionUID = 1L;

  public LinkException(String message) {
    super(message);
  }
}
