package witnessmark.toml;

import java.util.List;
import java.util.stream.Collectors;

/** An input file is wrong; carries every fault found in it. */
public final class FaultsException extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient List<Fault> faults;

  public FaultsException(List<Fault> faults) {
    super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  public List<Fault> faults() {
    return faults;
  }
}
