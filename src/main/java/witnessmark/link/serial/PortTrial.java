package witnessmark.link.serial;

/** Tries a port as the link would open it. */
public final class PortTrial {
  private PortTrial() {}

  /**
   * The path that the port has now.
   *
   * @throws PortException when it is not plugged in, or its name fits several
   */
  public static String locate(SerialSettings settings) throws PortException {
    return settings.port().locate(new PluggedPorts());
  }

  /**
   * Opens the port and closes it again. Some devices begin anew when that happens, so that it is
   * not for a port at work.
   *
   * @throws PortException when it cannot be opened
   */
  public static void open(SerialSettings settings) throws PortException {
    Line.open(locate(settings), settings).close();
  }
}
