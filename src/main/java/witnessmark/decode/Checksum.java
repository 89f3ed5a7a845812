package witnessmark.decode;

import com.google.re2j.Matcher;
import com.google.re2j.Pattern;
import java.nio.charset.Charset;
import java.util.HexFormat;
import java.util.Objects;

/**
 * Where a frame says its checksum, and which one it is.
 *
 * @param kind how it is computed
 * @param pattern matches the whole frame; the group {@code over} is the text summed, {@code sum}
 *     the hexadecimal digits
 */
public record Checksum(ChecksumKind kind, Pattern pattern) {
  /**
   * @throws IllegalArgumentException when the pattern lacks one of the two groups
   */
  public Checksum {
    Objects.requireNonNull(kind, "kind");
    if (!pattern.namedGroups().containsKey("over") || !pattern.namedGroups().containsKey("sum")) {
      throw new IllegalArgumentException("the pattern has not both groups \"over\" and \"sum\"");
    }
  }

  /** The part of the frame that the checksum is over, once it is verified. */
  String verify(String frame, Charset charset) throws Refusal {
    Matcher m = pattern.matcher(frame);
    if (!m.matches() || m.group("over") == null || m.group("sum") == null) {
      throw new Refusal("the frame has no checksum where the profile's pattern looks for it");
    }
    String sum = m.group("sum");
    if (sum.length() > kind.digits()
        || sum.isEmpty()
        || !sum.chars().allMatch(HexFormat::isHexDigit)) {
      throw new Refusal(
          "the checksum "
              + Reason.shown(sum)
              + " is not 1 to "
              + kind.digits()
              + " hexadecimal digits");
    }
    int computed = kind.of(m.group("over").getBytes(charset));
    if (HexFormat.fromHexDigits(sum) != computed) {
      throw new Refusal(
          "the checksum is "
              + sum
              + " but its bytes give "
              + HexFormat.of().withUpperCase().toHexDigits(computed, kind.digits()));
    }
    return m.group("over");
  }
}
