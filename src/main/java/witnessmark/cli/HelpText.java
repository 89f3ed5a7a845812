package witnessmark.cli;

import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine;
import picocli.CommandLine.Model.UsageMessageSpec;

/** Lets help flow to the width of the terminal, in sentences and paragraphs. */
final class HelpText {
  private HelpText() {}

  /**
   * Joins the lines of each description to paragraphs; the first sentence, which stands for the
   * command in a list, keeps a paragraph of its own.
   */
  static CommandLine flowing(CommandLine line) {
    UsageMessageSpec usage = line.getCommandSpec().usageMessage();
    usage.description(paragraphs(usage.description()));
    line.getSubcommands().values().forEach(HelpText::flowing);
    return line;
  }

  static String[] paragraphs(String... lines) {
    List<String> all = new ArrayList<>();
    boolean open = false;
    for (String line : lines) {
      if (line.isBlank()) {
        all.add("");
        open = false;
      } else if (open) {
        all.set(all.size() - 1, all.get(all.size() - 1) + " " + line.strip());
      } else {
        all.add(line);
        open = true;
      }
    }
    if (!all.isEmpty()) {
      int end = all.get(0).indexOf(". ");
      if (end > 0) {
        all.add(1, all.get(0).substring(end + 2));
        all.set(0, all.get(0).substring(0, end + 1));
      }
    }
    return all.toArray(String[]::new);
  }
}
