package witnessmark.certificate;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import witnessmark.entry.Entry;
import witnessmark.entry.EntryJson;
import witnessmark.record.UnitRecord;

/**
 * Makes the certificate of a unit.
 *
 * <p>A pure function: the same proved entries, paper and program give the same bytes, so that a
 * checker can make it again and compare. Its times are those of the entries.
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
    SortedMap<Long, Entry> entries = new TreeMap<>();
    proved.entries().forEach((n, bytes) -> entries.put(n, EntryJson.read(bytes)));
    UnitRecord unit = UnitRecord.of(entries);
    Instant at = entries.get(entries.lastKey()).at();
    try (PDDocument document = new PDDocument()) {
      document.setDocumentId(id(proved.bundle()));
      Map<Face, Typeface> faces = new EnumMap<>(Face.class);
      for (Face face : Face.values()) {
        faces.put(face, new Typeface(document, face));
      }
      String title = faces.get(Face.PLAIN).shown("Record of tightening, unit " + unit.unit());
      Archive.prepare(document, title, program, at);
      Sheet sheet = new Sheet(paper, faces);
      Pages.lay(sheet, unit, proved);
      List<List<Mark>> pages = Pages.finished(sheet, unit, proved, program);
      for (List<Mark> marks : pages) {
        page(document, paper, marks);
      }
      Archive.attach(document, proved.bundle(), at);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      document.save(out, CompressParameters.NO_COMPRESSION);
      return out.toByteArray();
    } catch (IOException e) {
      throw new IllegalStateException("writing to memory does not fail", e);
    }
  }

  private static void page(PDDocument document, Paper paper, List<Mark> marks) throws IOException {
    PDPage page = new PDPage(paper.size());
    document.addPage(page);
    try (PDPageContentStream content = new PDPageContentStream(document, page)) {
      for (Mark mark : marks) {
        mark.draw(content);
      }
    }
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
