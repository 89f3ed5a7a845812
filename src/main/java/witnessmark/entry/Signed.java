package witnessmark.entry;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A person's signature in an entry: its last two members, {@code key} (the entry that enrolled the
 * person's key) and {@code signature}. Signed are the exact bytes of the entry without the last
 * member, behind the log's name and the entry's number.
 */
public final class Signed {
  private static final String FORM = "witnessmark.local/decision/1";

  /** No more than this from the end: both members, with a number of 19 digits. */
  private static final int TAIL = 140;

  /** Of a signature's 64 bytes. */
  private static final int BASE64 = 88;

  private static final int MEMBER = ",\"signature\":\"\"".length() + BASE64;

  private static final Pattern END =
      Pattern.compile(",\"key\":(0|[1-9][0-9]{0,17}),\"signature\":\"[A-Za-z0-9+/]{86}==\"\\}\\z");

  private Signed() {}

  /** An entry that names the key it is about to be signed with. */
  public static byte[] naming(byte[] entry, long key) {
    return withMember(entry, ",\"key\":" + key);
  }

  /**
   * What a person signs.
   *
   * @param origin the log's own name
   * @param n the number that the entry gets
   * @param naming the entry with {@code key} and without {@code signature}
   */
  public static byte[] text(String origin, long n, byte[] naming) {
    byte[] head = (FORM + "\n" + origin + "\n" + n + "\n").getBytes(StandardCharsets.UTF_8);
    byte[] text = Arrays.copyOf(head, head.length + naming.length);
    System.arraycopy(naming, 0, text, head.length, naming.length);
    return text;
  }

  /** The entry with its signature. */
  public static byte[] with(byte[] naming, byte[] signature) {
    String base64 = Base64.getEncoder().encodeToString(signature);
    return withMember(naming, ",\"signature\":\"" + base64 + "\"");
  }

  /** The entry that enrolled the key by which these bytes are signed; empty where they are not. */
  public static OptionalLong key(byte[] entry) {
    int from = Math.max(0, entry.length - TAIL);
    String tail = new String(entry, from, entry.length - from, StandardCharsets.ISO_8859_1);
    Matcher end = END.matcher(tail);
    return end.find() ? OptionalLong.of(Long.parseLong(end.group(1))) : OptionalLong.empty();
  }

  /** The signature that these bytes end in; empty where they are not signed. */
  public static Optional<byte[]> signature(byte[] entry) {
    if (key(entry).isEmpty()) {
      return Optional.empty();
    }
    int to = entry.length - 2;
    String base64 = new String(entry, to - BASE64, BASE64, StandardCharsets.ISO_8859_1);
    return Optional.of(Base64.getDecoder().decode(base64));
  }

  /** Signed bytes as they were before the signature, which is their last member. */
  public static byte[] unsigned(byte[] entry) {
    byte[] naming = Arrays.copyOf(entry, entry.length - MEMBER);
    naming[naming.length - 1] = '}';
    return naming;
  }

  /** An entry ends in the brace of its one object. */
  private static byte[] withMember(byte[] entry, String member) {
    byte[] more = (member + "}").getBytes(StandardCharsets.US_ASCII);
    byte[] all = Arrays.copyOf(entry, entry.length - 1 + more.length);
    System.arraycopy(more, 0, all, entry.length - 1, more.length);
    return all;
  }
}
