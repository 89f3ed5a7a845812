package wrenchsim.shop;

import java.nio.charset.StandardCharsets;
import java.util.Random;

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
    return new Random(seed * 0x9E3779B97F4A7C15L + hash);
  }
}
