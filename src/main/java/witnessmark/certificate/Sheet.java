package witnessmark.certificate;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The pages being laid out, from top to bottom. Lengths are points, 1/72 inch. */
final class Sheet {
  static final float SIDE = 42;
  private static final float TOP = 56;
  private static final float BOTTOM = 52;
  private static final float LEADING = 1.32f;

  private final Map<Face, Typeface> faces;
  private final float width;
  private final float height;
  private final List<List<Mark>> pages = new ArrayList<>();
  private Runnable head = () -> {};
  private float y;
  private float inset;

  Sheet(Paper paper, Map<Face, Typeface> faces) {
    this.faces = new EnumMap<>(faces);
    this.width = paper.size().getWidth();
    this.height = paper.size().getHeight();
    turn();
  }

  List<List<Mark>> pages() {
    return pages;
  }

  Typeface face(Face face) {
    return faces.get(face);
  }

  float width() {
    return width;
  }

  float height() {
    return height;
  }

  /** The width between the margins. */
  float measure() {
    return width - 2 * SIDE;
  }

  /** Where the next thing begins. */
  float y() {
    return y;
  }

  void down(float points) {
    y -= points;
  }

  /** Keeps texts off the right end of their lines by so much. */
  void inset(float points) {
    inset = points;
  }

  /** What is drawn at the top of every further page until it is said otherwise. */
  void head(Runnable repeated) {
    head = repeated;
  }

  void add(Mark mark) {
    pages.get(pages.size() - 1).add(mark);
  }

  private void turn() {
    pages.add(new ArrayList<>());
    y = height - TOP;
  }

  /** Goes on on a new page where less room than that is left. */
  void need(float points) {
    if (y - points < BOTTOM && y < height - TOP) {
      turn();
      head.run();
    }
  }

  /** A line height for a size of type. */
  static float leading(float size) {
    return size * LEADING;
  }

  /** Puts a shown text at a place; the line's baseline is the given one. */
  void put(Face face, float size, Ink ink, float x, float baseline, String shown) {
    if (!shown.isEmpty()) {
      add(Mark.text(faces.get(face), size, ink, x, baseline, shown));
    }
  }

  /** A text of any length from the left of {@code x} on, with page breaks between its lines. */
  void say(Face face, float size, Ink ink, float x, String text) {
    Typeface type = faces.get(face);
    for (String line : type.wrapped(type.shown(text), size, width - SIDE - inset - x)) {
      need(leading(size));
      down(leading(size));
      put(face, size, ink, x, y + size * 0.28f, line);
    }
  }
}
