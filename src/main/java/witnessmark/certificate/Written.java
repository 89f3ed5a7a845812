package witnessmark.certificate;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * A file of exactly the form that certificates are written in: objects one after the other, streams
 * plain or deflated, one table of places, one trailer, and not a byte beside them. So nothing that
 * was added to the file can hide from a comparison. Reads any bytes in time and memory that are
 * bounded by their number and {@link #MOST}.
 */
final class Written {
  /** Bytes of all streams together, when inflated. */
  static final int MOST = 64 << 20;

  /**
   * What a small file may swell to: a certificate's streams are a few times as long as the file.
   */
  private static final int SWELLING = 64;

  private static final int ALWAYS = 4 << 20;
  private static final int DEEPEST = 24;
  private static final Pattern LENGTH = Pattern.compile("^<<\n/Length ([0-9]{1,9})\n");
  private static final Pattern OBJECT = Pattern.compile("([1-9][0-9]{0,6}) 0 obj\n");
  private static final String STREAM = "stream\r\n";
  private static final String ENDED = "\r\nendstream\nendobj\n";
  private static final String PLAIN_END = "\nendobj\n";

  /**
   * An object.
   *
   * @param dictionary what it says, in the file's own form, without the length of its stream
   * @param content its stream inflated; null where it has none
   */
  record Part(int number, String dictionary, byte[] content) {}

  /** What is wrong with the form. */
  static final class FormException extends Exception {
    private static final long serialVersionUID = 1L;

    FormException(String message) {
      super(message);
    }
  }

  private final String text;
  private final byte[] bytes;
  private final List<Part> parts = new ArrayList<>();
  private final List<Integer> places = new ArrayList<>();
  private String head = "";
  private String trailer = "";
  private int at;
  private long inflated;

  private Written(byte[] bytes) {
    this.bytes = bytes;
    this.text = new String(bytes, StandardCharsets.ISO_8859_1);
  }

  /**
   * Takes a file apart.
   *
   * @throws FormException when it has another form
   */
  static Written of(byte[] bytes) throws FormException {
    Written file = new Written(bytes);
    file.read();
    return file;
  }

  List<Part> parts() {
    return parts;
  }

  /** All of the file but its objects and their places. */
  String frame() {
    return head + trailer;
  }

  private void read() throws FormException {
    at = text.indexOf("1 0 obj\n");
    if (!text.startsWith("%PDF-1.") || at < 0 || at > 64) {
      throw new FormException("it does not begin as a certificate does");
    }
    head = text.substring(0, at);
    Matcher object = OBJECT.matcher(text);
    while (object.region(at, text.length()).lookingAt()) {
      places.add(at);
      int number = Integer.parseInt(object.group(1));
      at = object.end();
      parts.add(part(number));
    }
    table();
  }

  private Part part(int number) throws FormException {
    Matcher length = LENGTH.matcher(text).region(at, Math.min(at + 40, text.length()));
    if (!length.lookingAt()) {
      int end = text.indexOf(PLAIN_END, at);
      if (end < 0) {
        throw new FormException("object " + number + " has no end");
      }
      String dictionary = text.substring(at, end);
      if (dictionary.contains("stream")) {
        throw new FormException("object " + number + " has a stream in another form");
      }
      at = end + PLAIN_END.length();
      return new Part(number, checked(number, dictionary), null);
    }
    int begin = text.indexOf(STREAM, at);
    int data = begin + STREAM.length();
    long end = data + Long.parseLong(length.group(1));
    if (begin < 0 || end > bytes.length || !text.startsWith(ENDED, (int) end)) {
      throw new FormException("the stream of object " + number + " is not as long as it says");
    }
    String dictionary = checked(number, "<<\n" + text.substring(length.end(), begin));
    at = (int) end + ENDED.length();
    return new Part(number, dictionary, content(number, dictionary, data, (int) end));
  }

  private String checked(int number, String dictionary) throws FormException {
    int depth = 0;
    for (int i = 0; i < dictionary.length(); i++) {
      char c = dictionary.charAt(i);
      depth += c == '<' || c == '[' ? 1 : c == '>' || c == ']' ? -1 : 0;
      if (depth > 2 * DEEPEST) {
        throw new FormException("object " + number + " is nested too deeply");
      }
    }
    return dictionary;
  }

  private byte[] content(int number, String dictionary, int from, int to) throws FormException {
    int filters = dictionary.indexOf("/Filter");
    if (filters < 0) {
      count(to - from);
      return java.util.Arrays.copyOfRange(bytes, from, to);
    }
    if (!dictionary.startsWith("/Filter /FlateDecode\n", filters)
        || dictionary.indexOf("/Filter", filters + 1) >= 0
        || dictionary.contains("/DecodeParms")) {
      throw new FormException("the stream of object " + number + " is coded otherwise");
    }
    Inflater inflater = new Inflater();
    try {
      inflater.setInput(bytes, from, to - from);
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      byte[] buffer = new byte[8192];
      while (!inflater.finished()) {
        int read = inflater.inflate(buffer);
        if (read == 0 && (inflater.needsInput() || inflater.needsDictionary())) {
          throw new FormException("the stream of object " + number + " is cut off");
        }
        count(read);
        out.write(buffer, 0, read);
      }
      if (inflater.getRemaining() > 0) {
        throw new FormException("the stream of object " + number + " has more after its end");
      }
      return out.toByteArray();
    } catch (DataFormatException e) {
      throw new FormException("the stream of object " + number + " is damaged");
    } finally {
      inflater.end();
    }
  }

  private void count(int more) throws FormException {
    inflated += more;
    long most = Math.min(MOST, ALWAYS + (long) SWELLING * bytes.length);
    if (inflated > most) {
      throw new FormException("its streams hold more than " + most + " bytes");
    }
  }

  /** The table must be the one that follows from the objects, and the trailer end the file. */
  private void table() throws FormException {
    int[] offsets = new int[parts.size() + 1];
    for (int i = 0; i < parts.size(); i++) {
      int number = parts.get(i).number();
      if (number >= offsets.length || offsets[number] != 0) {
        throw new FormException("objects are not numbered from 1 on, each once");
      }
      offsets[number] = places.get(i);
    }
    StringBuilder table = new StringBuilder("xref\n0 " + offsets.length + "\n");
    table.append("0000000000 65535 f\r\n");
    for (int n = 1; n < offsets.length; n++) {
      table.append(String.format("%010d 00000 n\r\n", offsets[n]));
    }
    int end = at + table.length();
    String last = "startxref\n" + at + "\n%%EOF\n";
    if (!text.startsWith(table.toString(), at) || !text.endsWith(last)) {
      throw new FormException("there is more in it than its objects, or it was written on");
    }
    trailer = text.substring(end, text.length() - last.length());
    if (!trailer.startsWith("trailer\n<<\n/Root 1 0 R\n") || trailer.contains("/Prev")) {
      throw new FormException("its trailer is another");
    }
  }
}
