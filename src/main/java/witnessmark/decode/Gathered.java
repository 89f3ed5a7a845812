package witnessmark.decode;

import java.io.ByteArrayOutputStream;
import java.security.MessageDigest;
import java.util.Arrays;

/** Bytes gathered so far: all of them up to a capacity, beyond it their head and hash. */
final class Gathered {
  private final int capacity;
  private ByteArrayOutputStream kept = new ByteArrayOutputStream();
  private MessageDigest digest;
  private long length;

  Gathered(int capacity) {
    this.capacity = Math.max(capacity, Sample.KEPT);
  }

  void add(byte next) {
    length++;
    if (digest == null && length > capacity) {
      byte[] all = kept.toByteArray();
      digest = Sample.newDigest();
      digest.update(all);
      kept = new ByteArrayOutputStream();
      kept.write(all, 0, Sample.KEPT);
    }
    if (digest == null) {
      kept.write(next);
    } else {
      digest.update(next);
    }
  }

  long length() {
    return length;
  }

  /** The bytes between the first {@code skip} and the last {@code drop}; within capacity only. */
  byte[] between(int skip, int drop) {
    return Arrays.copyOfRange(kept.toByteArray(), skip, (int) length - drop);
  }

  /** The sample of everything gathered, which is then forgotten. */
  Sample sample() {
    byte[] head = kept.toByteArray();
    Sample sample =
        digest == null ? Sample.of(head) : new Sample(head, length, Sample.hex(digest.digest()));
    clear();
    return sample;
  }

  void clear() {
    kept.reset();
    digest = null;
    length = 0;
  }
}
