package witnessmark.ledger;

import java.util.Base64;

/**
 * What a checkpoint says; its signature is not looked at.
 *
 * @param origin the log's name
 * @param size how many entries
 * @param root over them, 32 bytes; not copied, so not to be changed
 */
record TreeHead(String origin, long size, byte[] root) {
  /**
   * @throws LedgerException when the text is no checkpoint
   */
  static TreeHead of(String note) {
    String[] lines = note.split("\n", 4);
    try {
      byte[] root = Base64.getDecoder().decode(lines[2]);
      if (root.length == 32) {
        return new TreeHead(lines[0], Long.parseLong(lines[1]), root);
      }
    } catch (IllegalArgumentException | ArrayIndexOutOfBoundsException e) {
      // Falls to the sentence below.
    }
    throw new LedgerException(
        "A checkpoint is not three lines of origin, size and root. Run: witnessmark ledger verify");
  }
}
