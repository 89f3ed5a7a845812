package witnessmark.http;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * Which part of a message was at fault when it was refused. The sentences name values, of which
 * there may be any number; figures want few words.
 */
enum RefusalClass {
  /** The topic: it names no station, or one that is not served here. */
  TOPIC("the topic names", "the station is not among"),
  /** The message as a whole: no UTF-8, no JSON, too long. */
  PAYLOAD("the payload ", "the bytes are ", "something follows ", "an element is nested so deep"),
  /** A burst of no elements, or of too many. */
  BURST("an empty burst", "a burst of "),
  /** An element that is no object, too long, too deep, or says a thing twice. */
  ELEMENT("an event is ", "a scan is ", "the field ", "an element is "),
  /** How frames are cut from a line. */
  FRAME("a frame ", "the line closed ", "the frame "),
  /** A frame's checksum. */
  CHECKSUM("the checksum ", "the frame has no checksum"),
  /** A field that is missing, or whose value is none. */
  FIELD(
      "torque ",
      "breakaway ",
      "wrench ",
      "unit ",
      "event ",
      "angle ",
      "direction ",
      "fastener ",
      "operator ",
      "time ",
      "scan ",
      "the event has no ",
      "the message has no ",
      "column "),
  /** A fault of the bridge itself. */
  PROGRAM("this program failed"),
  OTHER;

  private final List<String> beginnings;

  RefusalClass(String... beginnings) {
    this.beginnings = List.of(beginnings);
  }

  /** The word in figures. */
  String code() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** The class of a reason: the one with the longest beginning that it has. */
  static RefusalClass of(String reason) {
    if (reason.matches("[0-9]+ bytes .*")) {
      return FRAME;
    }
    RefusalClass best = OTHER;
    int length = 0;
    for (RefusalClass c : values()) {
      int fits =
          c.beginnings.stream().filter(reason::startsWith).mapToInt(String::length).max().orElse(0);
      if (fits > length) {
        best = c;
        length = fits;
      }
    }
    return best;
  }

  /** All words. */
  static List<String> codes() {
    return Arrays.stream(values()).map(RefusalClass::code).toList();
  }
}
