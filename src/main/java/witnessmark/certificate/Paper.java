package witnessmark.certificate;

import org.apache.pdfbox.pdmodel.common.PDRectangle;

/** The sheet that a certificate is made for. */
public enum Paper {
  A4(PDRectangle.A4),
  LETTER(PDRectangle.LETTER);

  private final PDRectangle size;

  Paper(PDRectangle size) {
    this.size = size;
  }

  PDRectangle size() {
    return size;
  }
}
