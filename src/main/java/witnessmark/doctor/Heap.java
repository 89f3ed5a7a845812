package witnessmark.doctor;

import java.util.List;

/** The Java that runs the program. */
final class Heap {
  private static final long SMALL = 96L << 20;

  private Heap() {}

  static List<Finding> look() {
    return look(Runtime.version().toString(), Runtime.getRuntime().maxMemory());
  }

  static List<Finding> look(String version, long heap) {
    String found = "Java " + version + ", at most " + (heap >> 20) + " MiB of heap";
    return List.of(
        heap < SMALL
            ? Finding.warn(
                "java", found + "; that is little for a long log", "Start it with: java -Xmx256m")
            : Finding.good("java", found + "."));
  }
}
