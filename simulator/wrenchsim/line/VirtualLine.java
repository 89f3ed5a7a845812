package wrenchsim.line;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Objects;
import java.util.concurrent.TimeUnit;
import wrenchsim.wire.LinkException;

/**
 * A pseudo-terminal made by a {@code socat} child: a bridge opens {@code link} as it would a real
 * port, and the wrench speaks through the child's standard input and output.
 *
 * @param link the path at which the terminal appears
 * @param program the program that makes it, {@code socat} unless a test says otherwise
 */
public record VirtualLine(Path link, String program) implements Line {

  private static final long APPEARS_WITHIN_MILLIS = 5_000;

  public VirtualLine {
    Objects.requireNonNull(link, "link");
    if (link.toString().contains(",") || link.toString().contains("!")) {
      throw new IllegalArgumentException(
          "socat cannot take a path with ',' or '!', but got '" + link + "'");
    }
  }

  public VirtualLine(Path link) {
    this(link, "socat");
  }

  @Override
  public Ends open() throws LinkException {
    if (Files.exists(link, LinkOption.NOFOLLOW_LINKS) && !Files.isSymbolicLink(link)) {
      throw new LinkException(
          "%s exists and is not a link: a virtual line would replace it. Name another path."
              .formatted(link));
    }
    Process socat;
    try {
      Files.deleteIfExists(link);
      socat =
          new ProcessBuilder(program, "pty,raw,echo=0,link=" + link, "STDIO")
              .redirectError(ProcessBuilder.Redirect.INHERIT)
              .start();
    } catch (IOException e) {
      throw new LinkException(
          "a virtual line needs the program %s, which does not start (%s). Install it: apt install socat."
              .formatted(program, e.getMessage()));
    }
    awaitLink(socat);
    return new ChildEnds(socat);
  }

  private void awaitLink(Process socat) throws LinkException {
    long deadline = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(APPEARS_WITHIN_MILLIS);
    try {
      while (!Files.exists(link)) {
        if (socat.waitFor(10, TimeUnit.MILLISECONDS)) {
          throw new LinkException(
              "socat made no terminal at %s and ended with status %d: its own words are above. Is the directory there and writable?"
                  .formatted(link, socat.exitValue()));
        }
        if (System.nanoTime() > deadline) {
          socat.destroy();
          throw new LinkException(
              "socat made no terminal at %s within %d s."
                  .formatted(link, APPEARS_WITHIN_MILLIS / 1000));
        }
      }
    } catch (InterruptedException e) {
      socat.destroy();
      Thread.currentThread().interrupt();
      throw new LinkException("interrupted while waiting for the terminal at " + link);
    }
  }

  private record ChildEnds(Process socat) implements Ends {
    @Override
    public int read(byte[] into) throws IOException {
      return socat.getInputStream().read(into);
    }

    @Override
    public void write(byte[] bytes) throws IOException {
      socat.getOutputStream().write(bytes);
      socat.getOutputStream().flush();
    }

    @Override
    public void close() {
      socat.destroy();
    }
  }
}
