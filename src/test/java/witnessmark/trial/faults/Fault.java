package witnessmark.trial.faults;

import java.nio.file.Path;

/** Something that goes wrong around the daemon. */
interface Fault {
  String title();

  /** What is promised of it, in a sentence. */
  String promise();

  /**
   * Brings it on and tells what came of it.
   *
   * @param directory an empty one
   * @param scale how much is done: 1 for a short look
   */
  Row run(Path directory, int scale) throws Exception;
}
