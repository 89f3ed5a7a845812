package witnessmark.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import witnessmark.ledger.verify.ProofCheck;

/** Finds the proof in a file that somebody handed over. */
final class ProofSource {
  private static final byte[] PDF = "%PDF-".getBytes(StandardCharsets.US_ASCII);

  private ProofSource() {}

  /** The bytes of the file. */
  static byte[] read(Path file) {
    byte[] bytes = Files.bytes(file, ProofCheck.LARGEST + 1);
    if (bytes.length > ProofCheck.LARGEST) {
      throw new Refusal(
          Exit.INPUT,
          file + " is larger than " + ProofCheck.LARGEST + " bytes; no proof is. Name a proof.");
    }
    return bytes;
  }

  /** Whether it is a document that may hold a proof. */
  static boolean isPdf(byte[] bytes) {
    return bytes.length >= PDF.length && Arrays.equals(bytes, 0, PDF.length, PDF, 0, PDF.length);
  }
}
