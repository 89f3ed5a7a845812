package witnessmark.decode;

import java.nio.charset.Charset;
import java.util.Arrays;
import java.util.List;

/** That a decoder kept every byte: what it gives, one behind the other, is what it was given. */
final class Kept {
  private static final String BETWEEN = " \t\r\n,[]";

  private Kept() {}

  /** Whether anything was taken; how each was read goes to {@code kind}. */
  static boolean all(List<Decoded> decoded, byte[] bytes, Charset charset, StringBuilder kind) {
    check(!decoded.isEmpty(), "nothing came of it");
    boolean taken = false;
    int at = 0;
    for (Decoded each : decoded) {
      at = begin(each, bytes, at, charset) + length(each, charset);
      taken |= !(each instanceof Malformed);
      kind.append(' ')
          .append(each instanceof Malformed m ? m.reason() : each.getClass().getSimpleName());
      faithful(each);
    }
    while (at < bytes.length) {
      check(BETWEEN.indexOf(bytes[at++]) >= 0, "bytes that were lost");
    }
    return taken;
  }

  /** Where it stands; nothing but JSON's own marks may be before it. */
  private static int begin(Decoded each, byte[] bytes, int from, Charset charset) {
    for (int at = from; ; at++) {
      if (matches(each, bytes, at, charset)) {
        return at;
      }
      check(at < bytes.length && BETWEEN.indexOf(bytes[at]) >= 0, "bytes that were not there");
    }
  }

  private static int length(Decoded each, Charset charset) {
    return each instanceof Malformed m ? (int) m.sample().length() : raw(each, charset).length;
  }

  private static byte[] raw(Decoded each, Charset charset) {
    String raw = each instanceof Torqued t ? t.raw() : ((Scanned) each).raw();
    return raw.getBytes(charset);
  }

  private static boolean matches(Decoded each, byte[] bytes, int at, Charset charset) {
    int to = at + length(each, charset);
    if (to > bytes.length) {
      return false;
    }
    byte[] part = Arrays.copyOfRange(bytes, at, to);
    return each instanceof Malformed m
        ? Sha.describes(m.sample(), part)
        : Arrays.equals(part, raw(each, charset));
  }

  /** What was read stands in the text as it was written, where nothing was escaped or named. */
  private static void faithful(Decoded each) {
    if (each instanceof Torqued t && t.raw().indexOf('\\') < 0) {
      String digits = t.event().torque().digits().text();
      check(
          t.raw().contains(digits) || t.raw().replace(',', '.').contains(digits),
          "digits that were not written");
    }
  }

  private static void check(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError(what);
    }
  }
}
