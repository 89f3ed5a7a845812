package witnessmark.certificate;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.certificate.Written.Part;

/** Finds what no certificate has: all that acts, covers, or is filled in. */
final class Hidden {
  /** Text in a dictionary: certificates have no bracket in it that is not escaped. */
  private static final Pattern STRING =
      Pattern.compile("\\((?:[^()\\\\]|\\\\.)*+\\)", Pattern.DOTALL);

  private static final Pattern NAME = Pattern.compile("/([^\\s/<>\\[\\]()]+)");

  /** Every name that stands in the dictionaries of a certificate. */
  private static final Set<String> KNOWN =
      Set.of(
          ("A AF AFRelationship Adobe Ascent BaseFont CIDFontType2 CIDSet CIDSystemInfo CIDToGIDMap"
                  + " CapHeight Catalog Contents Count CreationDate Creator Data DescendantFonts Desc"
                  + " Descent DestOutputProfile EF EmbeddedFile EmbeddedFiles Encoding F Filespec"
                  + " Filter FlateDecode Flags Font FontBBox FontDescriptor FontFile2 FontName"
                  + " FontWeight GTS_PDFA1 Identity Identity-H Info ItalicAngle Kids Lang Length1"
                  + " Limits MediaBox Metadata ModDate N Names Ordering OutputCondition"
                  + " OutputConditionIdentifier OutputIntent OutputIntents Page Pages Parent Params"
                  + " Producer RegistryName Registry Resources S Size StemV Subtype Supplement Title"
                  + " ToUnicode Type Type0 UF Version W DW XHeight XML 1.7 application#2Fjson")
              .split(" "));

  private Hidden() {}

  /** The names that do not belong there, a sentence each. */
  static List<String> in(Written file) {
    Set<String> strange = new TreeSet<>();
    for (Part part : file.parts()) {
      Matcher name = NAME.matcher(STRING.matcher(part.dictionary()).replaceAll("()"));
      while (name.find()) {
        String found = name.group(1);
        boolean resource = found.matches("F[0-9]{1,3}|[A-Z]{6}\\+DejaVu[A-Za-z-]{1,40}");
        if (!KNOWN.contains(found) && !resource) {
          strange.add("/" + (found.length() > 40 ? found.substring(0, 40) : found));
        }
      }
    }
    if (file.parts().stream().anyMatch(p -> p.dictionary().contains("%"))) {
      strange.add("%");
    }
    List<String> sentences = new ArrayList<>();
    strange.stream()
        .limit(20)
        .forEach(
            s ->
                sentences.add(
                    "the file holds "
                        + s.replaceAll("[^ -~]", "?")
                        + ", which no certificate has"));
    return sentences;
  }
}
