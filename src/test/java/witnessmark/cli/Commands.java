package witnessmark.cli;

import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** The commands that people are told of. */
public final class Commands {
  private Commands() {}

  /** Their names. */
  public static Set<String> names() {
    return Main.commands().getSubcommands().entrySet().stream()
        .filter(c -> !c.getValue().getCommandSpec().usageMessage().hidden())
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }
}
