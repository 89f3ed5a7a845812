package witnessmark.certificate;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.certificate.Written.FormException;
import witnessmark.certificate.Written.Part;

/**
 * A file that is said to be a certificate, read without trusting it.
 *
 * @param bundle the attached proof
 * @param program who wrote it, by its own word
 * @param parties whom it names, by its own word
 */
public record CertificateFile(byte[] bundle, String program, Parties parties) {
  /** The name of the attached proof. */
  public static final String ATTACHMENT = "witnessmark-proof.json";

  private static final Pattern PROGRAM =
      Pattern.compile("<xmp:CreatorTool>([A-Za-z0-9 .+()_-]{1,60})</xmp:CreatorTool>");

  public CertificateFile {
    bundle = bundle.clone();
  }

  @Override
  public byte[] bundle() {
    return bundle.clone();
  }

  /**
   * Reads a file of any bytes, in bounded time and memory.
   *
   * @throws IllegalArgumentException that says why it is no certificate as this program writes them
   */
  public static CertificateFile read(byte[] pdf) {
    try {
      Written file = Written.of(pdf);
      byte[] bundle = only(file, "/Type /EmbeddedFile\n");
      String xmp = new String(only(file, "/Type /Metadata\n"), StandardCharsets.UTF_8);
      Matcher program = PROGRAM.matcher(xmp);
      if (!program.find()) {
        throw new FormException("it does not say what program wrote it");
      }
      return new CertificateFile(bundle, program.group(1), parties(xmp));
    } catch (FormException e) {
      throw new IllegalArgumentException(
          "not a certificate as Witnessmark writes them: "
              + e.getMessage()
              + "; ask for the file as it was written",
          e);
    }
  }

  private static Parties parties(String xmp) throws FormException {
    try {
      return Parties.read(xmp);
    } catch (IllegalArgumentException e) {
      throw new FormException(e.getMessage());
    }
  }

  private static byte[] only(Written file, String what) throws FormException {
    List<Part> found =
        file.parts().stream()
            .filter(p -> p.content() != null && p.dictionary().contains(what))
            .toList();
    if (found.size() != 1) {
      throw new FormException(
          "it has " + found.size() + " streams of " + what.strip() + " where one belongs");
    }
    return found.get(0).content();
  }
}
