package witnessmark.link.serial;

import java.util.List;

/** Says which serial ports are plugged in now. */
@FunctionalInterface
public interface PortFinder {
  /** The ports of this moment, in any order. */
  List<FoundPort> ports();
}
