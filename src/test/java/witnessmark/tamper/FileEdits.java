package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.Function;

/** Edits of whole files, by somebody with an editor of bytes. */
final class FileEdits {
  private static final int PAGE = 4096;

  private FileEdits() {}

  static List<Kind> all() {
    return List.of(
        Kind.of("`ledger.db`: a byte anywhere", 4, (c, r) -> bytes(c, c.database(), r, 1)),
        Kind.of("`ledger.db`: up to 64 bytes", 2, (c, r) -> bytes(c, c.database(), r, 64)),
        Kind.of("`ledger.db`: cut off", 1, (c, r) -> cut(c, c.database(), r)),
        Kind.of("`ledger.db`: two pages exchanged", 1, FileEdits::pages),
        Kind.of("`ledger.pub`: a byte", 2, (c, r) -> bytes(c, c.verifier(), r, 1)),
        new Kind(
            "`ledger.db-wal` after kill -9: a byte", 3, true, (c, r) -> bytes(c, c.wal(), r, 1)),
        new Kind("`ledger.db-wal` after kill -9: cut off", 2, true, (c, r) -> cut(c, c.wal(), r)),
        new Kind("`ledger.db-wal` after kill -9: removed", 1, true, (c, r) -> remove(c.wal())));
  }

  private static void bytes(Copy copy, Path file, Random random, int most) {
    byte[] bytes = copy.read(file);
    int at = random.nextInt(bytes.length);
    int to = Math.min(bytes.length, at + 1 + random.nextInt(most));
    for (int i = at; i < to; i++) {
      bytes[i] ^= (byte) (1 + random.nextInt(255));
    }
    copy.write(file, bytes);
  }

  private static void cut(Copy copy, Path file, Random random) {
    byte[] bytes = copy.read(file);
    copy.write(file, Arrays.copyOf(bytes, random.nextInt(bytes.length)));
  }

  private static void pages(Copy copy, Random random) {
    byte[] bytes = copy.read(copy.database());
    int pages = bytes.length / PAGE;
    int one = random.nextInt(pages);
    int other = (one + 1 + random.nextInt(pages - 1)) % pages;
    Function<Integer, byte[]> page = n -> Arrays.copyOfRange(bytes, n * PAGE, (n + 1) * PAGE);
    byte[] kept = page.apply(one);
    System.arraycopy(page.apply(other), 0, bytes, one * PAGE, PAGE);
    System.arraycopy(kept, 0, bytes, other * PAGE, PAGE);
    copy.write(copy.database(), bytes);
  }

  private static void remove(Path file) {
    try {
      Files.delete(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
