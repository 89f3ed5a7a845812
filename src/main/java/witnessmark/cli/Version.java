package witnessmark.cli;

import picocli.CommandLine.IVersionProvider;

/** The version that the build wrote into the jar. */
final class Version implements IVersionProvider {
  /** The program as it names itself in what it writes. */
  static String program() {
    String built = Version.class.getPackage().getImplementationVersion();
    return "Witnessmark " + (built == null ? "(not from a jar)" : built);
  }

  @Override
  public String[] getVersion() {
    String built = Version.class.getPackage().getImplementationVersion();
    return new String[] {"witnessmark " + (built == null ? "(not from a jar)" : built)};
  }
}
