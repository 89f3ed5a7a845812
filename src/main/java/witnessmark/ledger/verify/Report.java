package witnessmark.ledger.verify;

import java.util.List;
import java.util.Objects;

/** What a verification saw. */
public final class Report {
  private final long size;
  private final byte[] root;
  private final List<Finding> findings;
  private final long unlisted;
  private final List<KeyStep> keySteps;

  Report(long size, byte[] root, List<Finding> findings, long unlisted, List<KeyStep> keySteps) {
    this.size = size;
    this.root = root.clone();
    this.findings = List.copyOf(Objects.requireNonNull(findings, "findings"));
    this.unlisted = unlisted;
    this.keySteps = List.copyOf(keySteps);
  }

  /** How many entries were read. */
  public long size() {
    return size;
  }

  /** The RFC 6962 root over the entries read, 32 bytes. */
  public byte[] root() {
    return root.clone();
  }

  /** The first findings, what is signed and logged before what follows from it. */
  public List<Finding> findings() {
    return findings;
  }

  /** How many further findings are not listed. */
  public long unlisted() {
    return unlisted;
  }

  /** The changes of the log's key that were followed, by entry. */
  public List<KeyStep> keySteps() {
    return keySteps;
  }

  /** Whether nothing at all is wrong. */
  public boolean verifies() {
    return findings.isEmpty();
  }
}
