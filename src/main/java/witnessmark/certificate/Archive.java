package witnessmark.certificate;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSDictionary;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.PDDocumentNameDictionary;
import org.apache.pdfbox.pdmodel.PDEmbeddedFilesNameTreeNode;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.apache.pdfbox.pdmodel.common.filespecification.PDEmbeddedFile;
import org.apache.pdfbox.pdmodel.graphics.color.PDOutputIntent;

/** What makes a document an archive file with an attachment: PDF/A-3b, ISO 19005-3. */
final class Archive {
  private static final COSName RELATIONSHIP = COSName.getPDFName("AFRelationship");
  private static final COSName ASSOCIATED = COSName.getPDFName("AF");
  private static final String SRGB = "sRGB IEC61966-2.1";

  private Archive() {}

  /**
   * @param title as it is shown
   */
  static void prepare(PDDocument document, String title, Book.Cover cover) throws IOException {
    String program = cover.program();
    Instant at = cover.at();
    document.setVersion(1.7f);
    document.getDocumentCatalog().setLanguage("en");
    PDDocumentInformation info = document.getDocumentInformation();
    info.setTitle(title);
    info.setCreator(program);
    info.setProducer(program);
    info.setCreationDate(calendar(at));
    info.setModificationDate(calendar(at));
    PDMetadata metadata =
        new PDMetadata(
            document, new ByteArrayInputStream(xmp(title, cover).getBytes(StandardCharsets.UTF_8)));
    document.getDocumentCatalog().setMetadata(metadata);
    PDOutputIntent intent =
        new PDOutputIntent(document, new ByteArrayInputStream(SrgbProfile.bytes()));
    intent.setInfo(SRGB);
    intent.setOutputCondition(SRGB);
    intent.setOutputConditionIdentifier(SRGB);
    intent.setRegistryName("http://www.color.org");
    document.getDocumentCatalog().addOutputIntent(intent);
  }

  /** Attaches the proof as it is, without compression, so that it can be found without a reader. */
  static void attach(PDDocument document, byte[] proof, Instant at) throws IOException {
    PDEmbeddedFile file = new PDEmbeddedFile(document, new ByteArrayInputStream(proof));
    file.setSubtype("application/json");
    file.setSize(proof.length);
    file.setModDate(calendar(at));
    PDComplexFileSpecification spec = new PDComplexFileSpecification();
    spec.setFile(CertificateFile.ATTACHMENT);
    spec.setFileUnicode(CertificateFile.ATTACHMENT);
    spec.setFileDescription("The entries that this document is made of, with their proof");
    spec.setEmbeddedFile(file);
    spec.setEmbeddedFileUnicode(file);
    COSDictionary dictionary = spec.getCOSObject();
    dictionary.setItem(RELATIONSHIP, COSName.getPDFName("Data"));
    PDEmbeddedFilesNameTreeNode names = new PDEmbeddedFilesNameTreeNode();
    PDEmbeddedFilesNameTreeNode leaf = new PDEmbeddedFilesNameTreeNode();
    leaf.setNames(Map.of(CertificateFile.ATTACHMENT, spec));
    names.setKids(List.of(leaf));
    PDDocumentNameDictionary all = new PDDocumentNameDictionary(document.getDocumentCatalog());
    all.setEmbeddedFiles(names);
    document.getDocumentCatalog().setNames(all);
    COSArray associated = new COSArray();
    associated.add(dictionary);
    document.getDocumentCatalog().getCOSObject().setItem(ASSOCIATED, associated);
  }

  private static Calendar calendar(Instant at) {
    return GregorianCalendar.from(at.atZone(ZoneOffset.UTC));
  }

  private static String xmp(String title, Book.Cover cover) {
    String date = java.time.format.DateTimeFormatter.ISO_INSTANT.format(seconds(cover.at()));
    return """
        <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
        <x:xmpmeta xmlns:x="adobe:ns:meta/">
        <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
        <rdf:Description rdf:about="" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/">
        <pdfaid:part>3</pdfaid:part><pdfaid:conformance>B</pdfaid:conformance>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/">
        <dc:format>application/pdf</dc:format>
        <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%1$s</rdf:li></rdf:Alt></dc:title>
        %4$s</rdf:Description>
        <rdf:Description rdf:about="" xmlns:xmp="http://ns.adobe.com/xap/1.0/">
        <xmp:CreatorTool>%2$s</xmp:CreatorTool>
        <xmp:CreateDate>%3$s</xmp:CreateDate><xmp:ModifyDate>%3$s</xmp:ModifyDate>
        </rdf:Description>
        <rdf:Description rdf:about="" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
        <pdf:Producer>%2$s</pdf:Producer>
        </rdf:Description>
        </rdf:RDF>
        </x:xmpmeta>
        <?xpacket end="r"?>"""
        .formatted(escaped(title), escaped(cover.program()), date, cover.parties().xmp());
  }

  private static Instant seconds(Instant at) {
    return at.truncatedTo(java.time.temporal.ChronoUnit.SECONDS);
  }

  static String escaped(String text) {
    return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
  }
}
