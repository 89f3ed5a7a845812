package witnessmark.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Makes inputs of kept ones: by tokens and lines mostly, by bytes sometimes. */
final class Mutator {
  private static final String[] NUMBERS = {
    "0",
    "-0",
    "00",
    "1",
    "-1",
    "7",
    "255",
    "256",
    "65536",
    "2147483648",
    "9223372036854775807",
    "9223372036854775808",
    "18446744073709551616",
    "1e999999999",
    "1e-999999999",
    "1E400",
    "0x1F",
    "0.1",
    "-33.0",
    ".5",
    "5.",
    "33,0",
    "999999999999999999999999",
    "1_000",
    "NaN",
    "Infinity"
  };
  private static final String[] TEXTS = {
    "\u0000",
    "\"",
    "'",
    "\\",
    "\\u0000",
    "\\ud800",
    "\u202e",
    "\ufeff",
    "\uD83D\uDE00",
    "../",
    "%",
    "$SYS",
    "+",
    "#",
    "\r",
    "\n",
    "\n\n",
    "\t",
    " ",
    "{",
    "}",
    "[",
    "]",
    "(",
    ")",
    "<",
    ">",
    ":",
    ",",
    "null",
    "true",
    "{}",
    "[]",
    "\"\"",
    "=",
    "|",
    "\u0002",
    "\u0003",
    "A".repeat(70),
    "é",
    "\u0085"
  };
  private static final String[][] PAIRS = {
    {"[", "]"}, {"{", "}"}, {"{\"a\":", "}"}, {"\"", "\""}, {"(", ")"}, {"'", "'"}, {"<<", ">>"}
  };

  private final Random random;
  private final List<String> words;
  private final int longest;

  Mutator(Random random, List<String> words, int longest) {
    this.random = random;
    this.words = words;
    this.longest = longest;
  }

  /** One to five changes of the input, at times with pieces of the other. */
  byte[] of(byte[] input, byte[] other) {
    byte[] bytes = input;
    int changes = 1 + Math.min(4, Integer.numberOfTrailingZeros(random.nextInt() | 16));
    for (int i = 0; i < changes; i++) {
      bytes = changed(bytes, other);
    }
    return bytes.length > Math.max(longest, input.length) ? Arrays.copyOf(bytes, longest) : bytes;
  }

  private byte[] changed(byte[] bytes, byte[] other) {
    int kind = random.nextInt(20);
    if (kind < 5) {
      return byByte(bytes, kind);
    }
    if (kind < 8) {
      return byLine(bytes, other);
    }
    return byToken(bytes, other, kind);
  }

  private byte[] byByte(byte[] bytes, int kind) {
    int at = random.nextInt(bytes.length + 1);
    int to = Math.min(bytes.length, at + 1 + random.nextInt(6));
    return switch (kind) {
      case 0 -> put(bytes, at, Math.min(bytes.length, at + 1), flipped(bytes, at));
      case 1 -> put(bytes, at, at, new byte[] {(byte) random.nextInt(256)});
      case 2 -> put(bytes, at, to, new byte[0]);
      case 3 -> random.nextInt(4) == 0 ? Arrays.copyOf(bytes, at) : bytes;
      default -> put(bytes, at, at, Arrays.copyOfRange(bytes, at, to));
    };
  }

  private byte[] flipped(byte[] bytes, int at) {
    return at == bytes.length
        ? new byte[0]
        : new byte[] {(byte) (bytes[at] ^ 1 << random.nextInt(8))};
  }

  private byte[] byLine(byte[] bytes, byte[] other) {
    int[] line = Tokens.of(bytes).line(random);
    int[] more = Tokens.of(other).line(random);
    byte[] piece = Arrays.copyOfRange(other, more[0], more[1]);
    return switch (random.nextInt(4)) {
      case 0 -> put(bytes, line[0], line[1], new byte[0]);
      case 1 -> put(bytes, line[0], line[0], Arrays.copyOfRange(bytes, line[0], line[1]));
      case 2 -> put(bytes, line[0], line[0], piece);
      default -> put(bytes, line[0], line[1], piece);
    };
  }

  private byte[] byToken(byte[] bytes, byte[] other, int kind) {
    Tokens tokens = Tokens.of(bytes);
    if (tokens.count() == 0) {
      return word();
    }
    int i = random.nextInt(tokens.count());
    int j = Math.min(tokens.count(), i + 1 + random.nextInt(1 + random.nextInt(9)));
    int from = tokens.start(i);
    int next = tokens.start(i + 1);
    int to = tokens.start(j);
    return switch (kind) {
      case 8, 9 -> put(bytes, from, from, word());
      case 10 -> put(bytes, from, next, word());
      case 12 -> put(bytes, from, to, new byte[0]);
      case 13 -> put(bytes, to, to, Arrays.copyOfRange(bytes, from, to));
      case 14 -> {
        int number = tokens.number(random);
        byte[] telling = text(NUMBERS);
        yield number < 0
            ? put(bytes, from, from, telling)
            : put(bytes, tokens.start(number), tokens.start(number + 1), telling);
      }
      case 15 -> {
        String[] pair = PAIRS[random.nextInt(PAIRS.length)];
        int times = random.nextInt(8) == 0 ? 1 + random.nextInt(1200) : 1;
        byte[] closed = put(bytes, to, to, utf8(pair[1].repeat(times)));
        yield put(closed, from, from, utf8(pair[0].repeat(times)));
      }
      case 16 -> {
        Tokens others = Tokens.of(other);
        int cut = others.start(random.nextInt(others.count() + 1));
        yield put(bytes, from, bytes.length, Arrays.copyOfRange(other, cut, other.length));
      }
      case 17 -> put(bytes, from, next, text(TEXTS));
      case 18 -> random.nextInt(12) == 0 ? put(bytes, from, next, blown(bytes, from, to)) : bytes;
      default -> put(bytes, from, next, token(other));
    };
  }

  /** A piece many times over. */
  private byte[] blown(byte[] bytes, int from, int to) {
    int size = to - from;
    int times = Math.min(longest / size, 1 << random.nextInt(17));
    byte[] all = new byte[size * times];
    for (int i = 0; i < times; i++) {
      System.arraycopy(bytes, from, all, i * size, size);
    }
    return all;
  }

  private byte[] token(byte[] other) {
    Tokens tokens = Tokens.of(other);
    return tokens.count() == 0 ? new byte[0] : tokens.token(random.nextInt(tokens.count()));
  }

  private byte[] word() {
    return words.isEmpty() || random.nextInt(3) == 0
        ? text(TEXTS)
        : utf8(words.get(random.nextInt(words.size())));
  }

  private byte[] text(String[] texts) {
    return utf8(texts[random.nextInt(texts.length)]);
  }

  static byte[] utf8(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /** {@code bytes} with {@code piece} in place of those from {@code from} to {@code to}. */
  static byte[] put(byte[] bytes, int from, int to, byte[] piece) {
    byte[] all = new byte[bytes.length - (to - from) + piece.length];
    System.arraycopy(bytes, 0, all, 0, from);
    System.arraycopy(piece, 0, all, from, piece.length);
    System.arraycopy(bytes, to, all, from + piece.length, bytes.length - to);
    return all;
  }
}
