package witnessmark.certificate;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.Optional;
import witnessmark.entry.EntryJson;
import witnessmark.record.UnitRecord;

/**
 * Makes the certificate of a unit.
 *
 * <p>A pure function: the same proved entries, paper, program and names give the same bytes, so
 * that a checker can make it again and compare. Its times are those of the entries.
 */
public final class Certificate {
  private Certificate() {}

  /**
   * The PDF.
   *
   * @param program the program that makes it, as {@code Witnessmark 0.1.0}
   * @throws IllegalArgumentException when the entries make no record of a unit
   */
  public static byte[] render(Proved proved, Paper paper, String program) {
    return render(proved, paper, program, Parties.NONE);
  }

  /**
   * The PDF with the names of who issues it and for whom.
   *
   * @throws IllegalArgumentException when the entries make no record of a unit
   */
  public static byte[] render(Proved proved, Paper paper, String program, Parties parties) {
    UnitRecord unit = UnitRecord.ofBytes(proved.entries(), proved.origin());
    Instant at = EntryJson.read(proved.entries().get(proved.entries().lastKey())).at();
    return Book.bound(
        new Book.Cover("Record of tightening, unit " + unit.unit(), program, at, parties),
        paper,
        id(proved.bundle()),
        sheet -> {
          Pages.lay(sheet, unit, proved, parties);
          return Pages.finished(sheet, unit, proved, program);
        },
        Optional.of(proved.bundle()));
  }

  /** The document's identifier, which follows from what it holds. */
  private static long id(byte[] bundle) {
    try {
      return ByteBuffer.wrap(MessageDigest.getInstance("SHA-256").digest(bundle)).getLong();
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
