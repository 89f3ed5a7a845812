package witnessmark.certificate;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import witnessmark.torque.Visible;

/**
 * Who issues a certificate and for whom, as its maker says. Not part of the record: nothing proves
 * it, and anybody can make the file anew with other names.
 *
 * @param issuer as the shop's name and address
 * @param addressee as the customer's name
 */
public record Parties(Optional<String> issuer, Optional<String> addressee) {
  /** Nobody is named. */
  public static final Parties NONE = new Parties(Optional.empty(), Optional.empty());

  /** Characters of a text at most. */
  public static final int MOST = 200;

  private static final Pattern ISSUER =
      Pattern.compile(
          "<dc:publisher><rdf:Bag><rdf:li>([^<>]{1,2000})</rdf:li></rdf:Bag></dc:publisher>");
  private static final Pattern ADDRESSEE =
      Pattern.compile(
          "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">([^<>]{1,2000})</rdf:li>"
              + "</rdf:Alt></dc:description>");

  /**
   * @throws IllegalArgumentException when a text is empty, too long, or not of one line of letters,
   *     figures and signs
   */
  public Parties {
    issuer.ifPresent(t -> check("issuer", t));
    addressee.ifPresent(t -> check("addressee", t));
  }

  private static void check(String what, String text) {
    if (text.isBlank() || text.length() > MOST) {
      throw new IllegalArgumentException(
          "the " + what + " is a text of 1 to " + MOST + " characters, not of " + text.length());
    }
    if (text.codePoints().anyMatch(Visible::hidden)) {
      throw new IllegalArgumentException(
          "the "
              + what
              + " holds a line end or another character that is not seen; write one line");
    }
  }

  /** In a sentence; empty where nobody is named. */
  Optional<String> told() {
    if (issuer.isEmpty() && addressee.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        "Not part of the record, named by whoever made this file: "
            + issuer.map(i -> "issuer: " + i).orElse("")
            + (issuer.isPresent() && addressee.isPresent() ? "; " : "")
            + addressee.map(a -> "for: " + a).orElse("")
            + ".");
  }

  /** As it stands in a file's description of itself. */
  String xmp() {
    return issuer
            .map(
                i ->
                    "<dc:publisher><rdf:Bag><rdf:li>"
                        + Archive.escaped(i)
                        + "</rdf:li></rdf:Bag></dc:publisher>\n")
            .orElse("")
        + addressee
            .map(
                a ->
                    "<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">"
                        + Archive.escaped(a)
                        + "</rdf:li></rdf:Alt></dc:description>\n")
            .orElse("");
  }

  /**
   * What a file's description of itself names.
   *
   * @throws IllegalArgumentException when a text there is none that is allowed
   */
  static Parties read(String xmp) {
    return new Parties(found(ISSUER, xmp), found(ADDRESSEE, xmp));
  }

  private static Optional<String> found(Pattern pattern, String xmp) {
    Matcher matcher = pattern.matcher(xmp);
    return matcher.find()
        ? Optional.of(
            matcher.group(1).replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&"))
        : Optional.empty();
  }
}
