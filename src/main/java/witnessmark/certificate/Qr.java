package witnessmark.certificate;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;

/** A text as a QR code. */
final class Qr {
  private Qr() {}

  /**
   * Draws it with its left lower corner at the place; a quiet zone is the caller's.
   *
   * @param side points
   */
  static void draw(Sheet sheet, String text, float x, float y, float side) {
    BitMatrix bits = bits(text);
    float step = side / bits.getWidth();
    for (int row = 0; row < bits.getHeight(); row++) {
      int from = 0;
      while (from < bits.getWidth()) {
        int to = from;
        while (to < bits.getWidth() && bits.get(to, row)) {
          to++;
        }
        if (to > from) {
          float bottom = y + side - (row + 1) * step;
          sheet.add(Mark.box(Ink.TEXT, x + from * step, bottom, (to - from) * step, step));
        }
        from = Math.max(to, from + 1);
      }
    }
  }

  private static BitMatrix bits(String text) {
    try {
      return new QRCodeWriter()
          .encode(
              text,
              BarcodeFormat.QR_CODE,
              0,
              0,
              Map.of(
                  EncodeHintType.MARGIN,
                  0,
                  EncodeHintType.ERROR_CORRECTION,
                  ErrorCorrectionLevel.M));
    } catch (WriterException e) {
      throw new IllegalArgumentException("the text is too long for a code: " + text.length(), e);
    }
  }
}
