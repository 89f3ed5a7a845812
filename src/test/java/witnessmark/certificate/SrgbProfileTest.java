package witnessmark.certificate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ICC_ColorSpace;
import java.awt.color.ICC_Profile;
import java.nio.ByteBuffer;
import org.junit.jupiter.api.Test;

class SrgbProfileTest {
  /** Java's colour management reads it, and finds the colours of its own sRGB in it. */
  @Test
  void coloursThroughItAreThoseOfSrgb() {
    ICC_ColorSpace space = new ICC_ColorSpace(ICC_Profile.getInstance(SrgbProfile.bytes()));
    for (float[] colour :
        new float[][] {{0, 0, 0}, {1, 1, 1}, {0.2f, 0.5f, 0.8f}, {0.85f, 0.36f, 0.1f}, {0, 1, 0}}) {
      float[] found = space.toRGB(colour);
      for (int i = 0; i < 3; i++) {
        assertThat(found[i]).isCloseTo(colour[i], within(0.01f));
      }
    }
  }

  /** What the three primaries make together is the white of the connection space, D50. */
  @Test
  void thePrimariesTogetherAreWhite() {
    ByteBuffer profile = ByteBuffer.wrap(SrgbProfile.bytes());
    double[] white = {0.9642, 1.0, 0.8249};
    for (int i = 0; i < 3; i++) {
      double sum = 0;
      for (int tag = 3; tag < 6; tag++) {
        int at = profile.getInt(128 + 4 + 12 * tag + 4);
        sum += profile.getInt(at + 8 + 4 * i) / 65536.0;
      }
      assertThat(sum).isCloseTo(white[i], within(0.0005));
    }
    assertThat(profile.getInt(0)).isEqualTo(profile.capacity());
  }
}
