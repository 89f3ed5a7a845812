package wrenchsim.line;

import java.io.Closeable;
import java.io.IOException;
import wrenchsim.wire.LinkException;

/** A serial line that can be opened, and opened again after it broke. */
public interface Line {
  /**
   * Opens it.
   *
   * @throws LinkException when it cannot be opened; the text says what to do
   */
  Ends open() throws LinkException;

  /** Both ends of an open line. */
  interface Ends extends Closeable {
    /**
     * Reads what has come: the number of bytes, 0 when nothing came for a while, -1 when the line
     * is gone.
     */
    int read(byte[] into) throws IOException;

    /** Writes all bytes; waits while the other side does not take them. */
    void write(byte[] bytes) throws IOException;
  }
}
