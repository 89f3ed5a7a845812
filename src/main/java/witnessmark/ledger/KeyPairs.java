package witnessmark.ledger;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.List;

/**
 * The key files of a data directory: the pair that signs, and while the key is being changed the
 * pair that comes next. Which of them signs is told by the newest checkpoint alone.
 */
final class KeyPairs {
  private final Path secret;
  private final Path open;
  private final Path nextSecret;
  private final Path nextOpen;

  KeyPairs(Path directory) {
    secret = directory.resolve("ledger.key");
    open = directory.resolve("ledger.pub");
    nextSecret = directory.resolve("ledger.key.next");
    nextOpen = directory.resolve("ledger.pub.next");
  }

  /**
   * The pairs that belong together, the present one first.
   *
   * @throws IOException when the present files cannot be read and there is no other pair
   * @throws IllegalArgumentException when they hold no pair and there is no other
   */
  List<LogKey> read() throws IOException {
    // The next files first: what is moved from there meanwhile is found in its new place.
    List<String> secrets = new ArrayList<>();
    List<String> opens = new ArrayList<>();
    present(nextSecret, secrets);
    present(nextOpen, opens);
    try {
      secrets.add(0, Files.readString(secret));
      opens.add(0, Files.readString(open));
      List<LogKey> pairs = pairs(secrets, opens);
      if (pairs.isEmpty()) {
        LogKey.read(secrets.get(0), opens.get(0));
      }
      return pairs;
    } catch (IOException e) {
      List<LogKey> pairs = pairs(secrets, opens);
      if (pairs.isEmpty()) {
        throw e;
      }
      return pairs;
    }
  }

  /** The pairs that the private keys make with those verifier lines or the ones here. */
  List<LogKey> under(List<String> lines) {
    List<String> secrets = new ArrayList<>();
    List<String> opens = new ArrayList<>(lines);
    present(secret, secrets);
    present(nextSecret, secrets);
    present(open, opens);
    present(nextOpen, opens);
    return pairs(secrets, opens);
  }

  private static List<LogKey> pairs(List<String> secrets, List<String> opens) {
    List<LogKey> pairs = new ArrayList<>();
    for (String pem : secrets) {
      for (String line : opens) {
        try {
          pairs.add(LogKey.read(pem, line));
        } catch (IllegalArgumentException e) {
          // Halves of two pairs, while one of them is being moved.
          continue;
        }
      }
    }
    return pairs;
  }

  private static void present(Path file, List<String> into) {
    try {
      into.add(Files.readString(file));
    } catch (IOException e) {
      // No key is being changed, or this user may not read the next one: it is no pair then.
      return;
    }
  }

  /** Writes a pair as the next one, so that it is on disk when this returns. */
  void stage(LogKey next) throws IOException {
    Files.deleteIfExists(nextSecret);
    Files.deleteIfExists(nextOpen);
    Durable.createPrivate(nextSecret, next.pem());
    Ownership.give(nextSecret, secret);
    Files.createFile(nextOpen, Modes.of("rw-r--r--"));
    Files.writeString(nextOpen, next.verifierLine() + "\n", StandardCharsets.UTF_8);
    Ownership.give(nextOpen, open);
    Durable.force(nextOpen);
    Durable.force(secret.getParent());
  }

  /**
   * Puts the next pair in the place of the present one, whose private half is overwritten. A crash
   * in between leaves files of which {@link #read} still makes the pair that signs.
   */
  void install(LogKey key) throws IOException {
    if (holds(nextOpen, key.verifierLine())) {
      Files.move(nextOpen, open, StandardCopyOption.ATOMIC_MOVE);
    }
    if (isNext(key)) {
      overwrite(secret);
      Files.move(nextSecret, secret, StandardCopyOption.ATOMIC_MOVE);
    }
    Durable.force(secret.getParent());
  }

  /** Whether the change to that key is not finished. */
  boolean pending(LogKey key) {
    return holds(nextOpen, key.verifierLine()) || isNext(key);
  }

  /** Whether the next private key is that one's, and not one that never came to sign. */
  private boolean isNext(LogKey key) {
    try {
      LogKey.read(Files.readString(nextSecret), key.verifierLine());
      return true;
    } catch (IOException | IllegalArgumentException e) {
      return false;
    }
  }

  private static boolean holds(Path file, String line) {
    try {
      return Files.readString(file).strip().equals(line);
    } catch (IOException e) {
      return false;
    }
  }

  private static void overwrite(Path file) throws IOException {
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
      channel.write(ByteBuffer.allocate((int) channel.size()), 0);
      channel.force(true);
    } catch (NoSuchFileException e) {
      // Gone already: nothing to destroy.
      return;
    }
  }
}
