package witnessmark.certificate;

/** The typefaces of a certificate; all are DejaVu fonts. */
enum Face {
  PLAIN("DejaVuSansCondensed.ttf"),
  BOLD("DejaVuSansCondensed-Bold.ttf"),
  FIXED("DejaVuSansMono.ttf");

  private final String file;

  Face(String file) {
    this.file = file;
  }

  String resource() {
    return "/net/sf/jasperreports/fonts/dejavu/" + file;
  }
}
