package witnessmark.certificate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.certificate.Written.FormException;
import witnessmark.certificate.Written.Part;

/**
 * How far a file is what its entries make.
 *
 * @param kind the closest comparison that it passed
 * @param differences what differs; empty unless it is {@link Kind#DIFFERENT}
 */
public record Sameness(Kind kind, List<String> differences) {
  private static final Pattern CONTENTS = Pattern.compile("/Contents ([0-9]+) 0 R");

  public Sameness {
    differences = List.copyOf(differences);
  }

  /** The comparisons, closest first. */
  public enum Kind {
    /** Every byte. */
    BYTES,
    /** Every object; only the compression differs, as by another Java's. */
    CONTENT,
    /** The text of every page; another version wrote the file, and draws it otherwise. */
    TEXT,
    /** None. */
    DIFFERENT
  }

  /**
   * Compares a file with what the entries make.
   *
   * @param pdf what {@link CertificateFile#read} took
   * @param program this program, as it would name itself in a certificate
   */
  public static Sameness of(byte[] pdf, Proved proved, String program) {
    CertificateFile said = CertificateFile.read(pdf);
    String by = said.program();
    List<byte[]> made = new ArrayList<>();
    for (Paper paper : Paper.values()) {
      byte[] again = Certificate.render(proved, paper, by, said.parties());
      if (Arrays.equals(again, pdf)) {
        return new Sameness(Kind.BYTES, List.of());
      }
      made.add(again);
    }
    try {
      return compared(Written.of(pdf), pdf, made, !by.equals(program));
    } catch (FormException e) {
      throw new IllegalArgumentException(e.getMessage(), e);
    }
  }

  private static Sameness compared(
      Written file, byte[] pdf, List<byte[]> made, boolean otherVersion) throws FormException {
    List<String> fewest = null;
    byte[] nearest = null;
    for (byte[] again : made) {
      List<String> differences = differences(file, Written.of(again));
      if (differences.isEmpty()) {
        return new Sameness(Kind.CONTENT, List.of());
      }
      if (fewest == null || differences.size() < fewest.size()) {
        fewest = differences;
        nearest = again;
      }
    }
    List<String> texts = PageTexts.differences(pdf, nearest);
    if (otherVersion && texts.isEmpty() && Hidden.in(file).isEmpty()) {
      return new Sameness(Kind.TEXT, List.of());
    }
    List<String> all = new ArrayList<>(Hidden.in(file));
    all.addAll(texts);
    all.addAll(otherVersion ? List.of() : fewest);
    return new Sameness(Kind.DIFFERENT, all);
  }

  private static List<String> differences(Written file, Written made) {
    List<String> differences = new ArrayList<>();
    if (!file.frame().equals(made.frame())) {
      differences.add("the file's head or trailer is another");
    }
    if (file.parts().size() != made.parts().size()) {
      differences.add(
          "the file has "
              + file.parts().size()
              + " objects, the entries make "
              + made.parts().size());
      return differences;
    }
    for (int i = 0; i < made.parts().size(); i++) {
      Part theirs = file.parts().get(i);
      Part ours = made.parts().get(i);
      if (theirs.number() != ours.number()
          || !theirs.dictionary().equals(ours.dictionary())
          || !Arrays.equals(theirs.content(), ours.content())) {
        differences.add(name(made, ours) + " is not what the entries make");
      }
    }
    return differences;
  }

  private static String name(Written made, Part part) {
    int page = 0;
    for (Part p : made.parts()) {
      if (p.dictionary().contains("/Type /Page\n")) {
        page++;
        Matcher contents = CONTENTS.matcher(p.dictionary());
        if (contents.find() && contents.group(1).equals(Integer.toString(part.number()))) {
          return "page " + page;
        }
      }
    }
    return "object " + part.number();
  }
}
