package witnessmark.certificate;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.pdfwriter.compress.CompressParameters;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;

/** Makes a document of laid-out pages: the same pages give the same bytes. */
final class Book {
  private Book() {}

  /**
   * What a document says of itself.
   *
   * @param program that makes it
   * @param at of what it is made of, not of its making
   */
  record Cover(String title, String program, Instant at, Parties parties) {}

  /**
   * The PDF.
   *
   * @param id the document's identifier
   * @param lay lays out what stands on the pages
   * @param proof attached to it
   */
  static byte[] bound(
      Cover cover,
      Paper paper,
      long id,
      Function<Sheet, List<List<Mark>>> lay,
      Optional<byte[]> proof) {
    try (PDDocument document = new PDDocument()) {
      document.setDocumentId(id);
      Map<Face, Typeface> faces = new EnumMap<>(Face.class);
      for (Face face : Face.values()) {
        faces.put(face, new Typeface(document, face));
      }
      String title = faces.get(Face.PLAIN).shown(cover.title());
      Archive.prepare(document, title, cover);
      for (List<Mark> marks : lay.apply(new Sheet(paper, faces))) {
        page(document, paper, marks);
      }
      if (proof.isPresent()) {
        Archive.attach(document, proof.get(), cover.at());
      }
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
}
