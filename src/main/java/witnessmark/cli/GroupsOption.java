package witnessmark.cli;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import picocli.CommandLine.Option;
import witnessmark.toml.Nearest;

/** The {@code --step} option of a check: the groups that are asked about. */
final class GroupsOption {
  @Option(
      names = "--step",
      paramLabel = "NAME",
      description = "Print this group only, in full sentences; repeat it for more.")
  private List<String> names = List.of();

  /** Whether some groups only are asked about. */
  boolean stated() {
    return !names.isEmpty();
  }

  /**
   * Those asked about, or all.
   *
   * @param groups ids of the tighten steps
   * @throws IllegalArgumentException when a name is none of them
   */
  Predicate<String> among(Set<String> groups) {
    for (String name : names) {
      if (!groups.contains(name)) {
        throw new IllegalArgumentException(
            "no step \""
                + name
                + "\" tightens anything; "
                + (groups.isEmpty() ? "nor does another" : Nearest.hint(name, groups)));
      }
    }
    return step -> names.isEmpty() || names.contains(step);
  }
}
