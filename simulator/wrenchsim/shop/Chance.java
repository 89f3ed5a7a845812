package wrenchsim.shop;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import java.util.SplittableRandom;

/**
 * Independent streams of chance from one seed: each thing that scatters draws from its own, so what
 * one does never shifts another.
 */
public final class Chance {
  private Chance() {}

  /** The stream of the thing of this name under this seed. */
  public static Random of(long seed, String name) {
    // FNV-1a, 64 bits: offset basis and prime from memory; any fixed spread of names would do.
    long hash = 0xcbf29ce484222325L;
    for (byte b : name.getBytes(StandardCharsets.UTF_8)) {
      hash = (hash ^ (b & 0xFF)) * 0x100000001b3L;
    }
    // Random's first values are alike for alike seeds, so the seed goes through a better mixer.
    return new Random(new SplittableRandom(seed ^ hash).nextLong());
  }
}
