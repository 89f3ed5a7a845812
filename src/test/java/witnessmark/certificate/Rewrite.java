package witnessmark.certificate;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.Deflater;
import witnessmark.certificate.Written.Part;

/** Writes the parts of a certificate anew in the same form, as a skilled forger would. */
final class Rewrite {
  private Rewrite() {}

  /** The same with a text in streams exchanged, wherever it stands; compressed at that level. */
  static byte[] of(Written file, int level, String from, String to) {
    List<Part> parts = new ArrayList<>();
    boolean found = from.isEmpty();
    for (Part part : file.parts()) {
      String content =
          part.content() == null ? "" : new String(part.content(), StandardCharsets.ISO_8859_1);
      if (!from.isEmpty() && content.contains(from)) {
        found = true;
        byte[] other = content.replace(from, to).getBytes(StandardCharsets.ISO_8859_1);
        parts.add(new Part(part.number(), part.dictionary(), other));
      } else {
        parts.add(part);
      }
    }
    if (!found) {
      throw new IllegalArgumentException("no stream holds " + from);
    }
    return written(file.frame(), parts, level);
  }

  /** The same with another content of the first compressed stream. */
  static byte[] with(Written file, byte[] content) {
    List<Part> parts = new ArrayList<>(file.parts());
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i).dictionary().contains("/FlateDecode")) {
        parts.set(i, new Part(parts.get(i).number(), parts.get(i).dictionary(), content));
        break;
      }
    }
    return written(file.frame(), parts, 9);
  }

  /** The parts in the form that certificates are written in, with the table that follows. */
  static byte[] written(String frame, List<Part> parts, int level) {
    int cut = frame.indexOf("trailer\n");
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    add(out, frame.substring(0, cut));
    int[] offsets = new int[parts.size() + 1];
    for (Part part : parts) {
      offsets[part.number()] = out.size();
      add(out, part.number() + " 0 obj\n");
      if (part.content() == null) {
        add(out, part.dictionary() + "\nendobj\n");
        continue;
      }
      byte[] data =
          part.dictionary().contains("/FlateDecode")
              ? deflated(part.content(), level)
              : part.content();
      add(out, "<<\n/Length " + data.length + "\n" + part.dictionary().substring(3) + "stream\r\n");
      out.writeBytes(data);
      add(out, "\r\nendstream\nendobj\n");
    }
    int table = out.size();
    StringBuilder xref =
        new StringBuilder("xref\n0 " + offsets.length + "\n0000000000 65535 f\r\n");
    for (int n = 1; n < offsets.length; n++) {
      xref.append(String.format("%010d 00000 n\r\n", offsets[n]));
    }
    add(out, xref + frame.substring(cut) + "startxref\n" + table + "\n%%EOF\n");
    return out.toByteArray();
  }

  private static byte[] deflated(byte[] content, int level) {
    Deflater deflater = new Deflater(level);
    deflater.setInput(content);
    deflater.finish();
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    byte[] buffer = new byte[8192];
    while (!deflater.finished()) {
      out.write(buffer, 0, deflater.deflate(buffer));
    }
    deflater.end();
    return out.toByteArray();
  }

  private static void add(ByteArrayOutputStream out, String text) {
    out.writeBytes(text.getBytes(StandardCharsets.ISO_8859_1));
  }
}
