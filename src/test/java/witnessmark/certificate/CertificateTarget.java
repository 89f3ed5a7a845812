package witnessmark.certificate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import witnessmark.certificate.Written.Part;
import witnessmark.fuzz.Target;
import witnessmark.ledger.verify.ProofCheck;
import witnessmark.ledger.verify.ProofResult;
import witnessmark.ledger.verify.VerifierKey;

/** Certificates handed over as files. */
public final class CertificateTarget implements Target<CertificateTarget.Read> {
  /** One in so many files that are taken has its pages compared, too, which takes long. */
  private static final int COMPARED = 400;

  private final Proved proved;
  private final VerifierKey key;
  private final List<byte[]> samples = new ArrayList<>();
  private final Written file;

  /** What was read, or why nothing was. */
  public record Read(CertificateFile file, String refusal) {}

  public CertificateTarget() {
    try {
      Path directory = Files.createTempDirectory("fuzz");
      proved =
          Cases.proved(
              directory.resolve("log"),
              Cases.closed(3, Cases.UNIT, "Rear-axle module"),
              Cases.UNIT);
      key = VerifierKey.parse(Files.readString(directory.resolve("log/ledger.pub")));
      for (Paper paper : Paper.values()) {
        samples.add(Certificate.render(proved, paper, Cases.PROGRAM));
      }
      file = Written.of(samples.get(0));
    } catch (IOException | Written.FormException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public String name() {
    return "certificates";
  }

  @Override
  public int share() {
    return 50;
  }

  @Override
  public List<byte[]> samples() {
    return List.copyOf(samples);
  }

  @Override
  public List<String> words() {
    return List.of(
        "/JavaScript",
        "/JS (app.alert\\(1\\))",
        "/OpenAction",
        "/Filter /FlateDecode\n",
        "endobj\n",
        "/Filter [/FlateDecode /FlateDecode]\n",
        "stream\r\n",
        "\r\nendstream\nendobj\n",
        "xref\n",
        "/Length 999999999\n",
        "/Prev 0",
        "trailer\n<<\n",
        "1 0 obj\n",
        "9999999 0 obj\n",
        "%%EOF\n",
        "/Type /EmbeddedFile\n",
        "/Type /Metadata\n",
        "<<",
        ">>",
        "/Encrypt 5 0 R",
        "startxref\n");
  }

  /** Streams may swell to 4 MiB and 64 times the file, and are read into a growing buffer. */
  @Override
  public Allowance allowance() {
    return new Allowance(20L << 20, 300);
  }

  @Override
  public int longest() {
    return 1 << 20;
  }

  /** Half of them have one part changed and are written anew in the right form. */
  @Override
  public byte[] own(byte[] input, Random random) {
    if (random.nextBoolean()) {
      return input;
    }
    List<Part> parts = new ArrayList<>(file.parts());
    int i = random.nextInt(parts.size());
    Part part = parts.get(i);
    byte[] content = part.content();
    String dictionary = part.dictionary();
    if (content != null && content.length > 0 && random.nextInt(4) != 0) {
      content = changed(content, random);
    } else {
      int at = random.nextInt(dictionary.length() + 1);
      String word = words().get(random.nextInt(words().size()));
      dictionary = dictionary.substring(0, at) + word + dictionary.substring(at);
    }
    parts.set(i, new Part(part.number(), dictionary, content));
    try {
      return Rewrite.written(file.frame(), parts, random.nextInt(10));
    } catch (StringIndexOutOfBoundsException e) {
      return input;
    }
  }

  private static byte[] changed(byte[] content, Random random) {
    if (random.nextInt(200) == 0) {
      return new byte[1 << 20 + random.nextInt(7)];
    }
    byte[] changed = content.clone();
    for (int n = 1 + random.nextInt(3); n > 0; n--) {
      int at = random.nextInt(changed.length);
      changed[at] = (byte) (random.nextBoolean() ? random.nextInt(256) : changed[at] ^ 1);
    }
    return changed;
  }

  @Override
  public Read parse(byte[] input) {
    try {
      return new Read(CertificateFile.read(input), null);
    } catch (IllegalArgumentException e) {
      return new Read(null, e.getMessage());
    }
  }

  @Override
  public String judge(byte[] input, Read read) {
    if (read.file() == null) {
      return "refused " + read.refusal();
    }
    ProofResult result = ProofCheck.bundle(read.file().bundle(), key);
    if (!(result instanceof ProofResult.Included included)) {
      return "refused, its proof " + result;
    }
    for (ProofResult.Entry entry : included.entries()) {
      if (!Arrays.equals(entry.bytes(), proved.entries().get(entry.n()))) {
        throw new AssertionError("proves an entry that is not so");
      }
    }
    if (Math.floorMod(Arrays.hashCode(input), COMPARED) == 0) {
      pages(input);
    }
    return "taken";
  }

  /** Where the check holds, the pages say what the entries make. */
  private void pages(byte[] input) {
    if (CertificateCheck.of(input, proved, Cases.PROGRAM).holds()
        && samples.stream().noneMatch(s -> text(s).equals(text(input)))) {
      throw new AssertionError("pages that the entries do not make");
    }
  }

  private static String text(byte[] pdf) {
    return PageTexts.read(pdf).toString();
  }
}
