package witnessmark.certificate;

/**
 * A colour of the page, in sRGB.
 *
 * @param red 0 to 1, as are the others
 */
record Ink(float red, float green, float blue) {
  static final Ink TEXT = new Ink(0.10f, 0.12f, 0.14f);
  static final Ink QUIET = new Ink(0.38f, 0.42f, 0.46f);
  static final Ink RULE = new Ink(0.78f, 0.80f, 0.82f);
  static final Ink PALE = new Ink(0.945f, 0.95f, 0.955f);
  static final Ink STRIPE = new Ink(0.85f, 0.36f, 0.10f);
  static final Ink BAND = new Ink(0.80f, 0.88f, 0.84f);
  static final Ink GUARD = new Ink(0.93f, 0.80f, 0.52f);
  static final Ink GOOD = new Ink(0.05f, 0.40f, 0.27f);
  static final Ink BAD = new Ink(0.72f, 0.11f, 0.11f);
  static final Ink GHOST = new Ink(0.90f, 0.90f, 0.90f);
}
