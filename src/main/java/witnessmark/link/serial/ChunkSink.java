package witnessmark.link.serial;

import java.time.Instant;

/** Takes the bytes of a serial line as they come. */
public interface ChunkSink {
  /**
   * Takes the next bytes; it may block, and the line is not read meanwhile.
   *
   * @param bytes holds the bytes from index 0; reused after the call returns
   * @param length how many of them count, at least 1
   * @param at when they were read
   */
  void chunk(byte[] bytes, int length, Instant at);

  /** The line is broken: what comes next does not continue what came before. */
  void lineClosed();
}
