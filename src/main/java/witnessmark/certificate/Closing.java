package witnessmark.certificate;

import java.util.List;
import java.util.stream.Collectors;

/** The end of a certificate: cautions, the checkpoint, and how to check it all. */
final class Closing {
  private static final float CODE = 92;

  private static final List<String> CAUTIONS =
      List.of(
          "Torque is not clamp load: friction decides how much of it tightens the joint. This record says"
              + " what wrenches reported and people confirmed; it does not make a joint safe.",
          "The maker's service instructions for the vehicle or equipment, local codes, and licensed or"
              + " qualified persons decide what is right and whether it was done right.",
          "Support the load and wear eye protection when working on it. Never let this record take the"
              + " place of a road test and of tightening checked again after it.");

  private Closing() {}

  static void draw(Sheet sheet, Proved proved) {
    cautions(sheet);
    Section.title(sheet, "How to check this certificate", 150);
    Qr.draw(
        sheet,
        tree(proved.checkpoint()),
        sheet.width() - Sheet.SIDE - CODE,
        sheet.y() - CODE - 2,
        CODE);
    float under = sheet.y() - CODE - 10;
    sheet.inset(CODE + 16);
    check(sheet, proved);
    checkpoint(sheet, proved.checkpoint());
    sheet.inset(0);
    sheet.down(Math.max(0, sheet.y() - under));
  }

  static void cautions(Sheet sheet) {
    Section.together(sheet, "Cautions", CAUTIONS);
  }

  private static void check(Sheet sheet, Proved proved) {
    Section.line(
        sheet,
        "Inside this file lies witnessmark-proof.json: the "
            + proved.entries().size()
            + " entries that everything above is made of, and for each the path of hashes that leads to the"
            + " signed root below. With the program Witnessmark and the shop's verifier key (shop.pub, asked"
            + " for once and kept) anybody can check it without a network:");
    fixed(sheet, "witnessmark ledger check-proof FILE.pdf --key shop.pub");
    Section.line(
        sheet,
        "The check proves each entry, then makes these pages anew from the entries and compares them with"
            + " this file, so that a figure changed on the page shows as well. What it does not show: that a"
            + " wrench told the truth, that none was found out of tolerance after the checkpoint, and that"
            + " there is no other job on the same unit.");
  }

  private static void checkpoint(Sheet sheet, String note) {
    Section.line(
        sheet,
        "The checkpoint: the log's name, its number of entries, its root, and the signature. The code at"
            + " the right holds the first three lines. Whoever keeps them can tell later whether the log's"
            + " history was rewritten.");
    for (String line : note.stripTrailing().split("\n", -1)) {
      fixed(sheet, line);
    }
  }

  private static void fixed(Sheet sheet, String line) {
    sheet.say(Face.FIXED, 6.4f, Ink.TEXT, Sheet.SIDE, line);
  }

  /** Its first three lines: origin, size and root. */
  static String tree(String note) {
    return note.lines().limit(3).collect(Collectors.joining("\n"));
  }
}
