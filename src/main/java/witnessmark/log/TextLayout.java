package witnessmark.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.LayoutBase;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import org.slf4j.event.KeyValuePair;
import witnessmark.torque.Visible;

/** An event as one line of text, whatever is in its values. */
final class TextLayout extends LayoutBase<ILoggingEvent> {
  static final DateTimeFormatter TIME =
      DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSSX").withZone(ZoneOffset.UTC);

  private final boolean journal;

  /**
   * @param journal with a priority of syslog in front, as sd-daemon(3) has it, and without the time
   *     that the journal knows itself
   */
  TextLayout(boolean journal) {
    this.journal = journal;
  }

  @Override
  public String doLayout(ILoggingEvent event) {
    StringBuilder line = new StringBuilder(200);
    if (journal) {
      line.append('<').append(priority(event.getLevel())).append('>');
    } else {
      line.append(TIME.format(event.getInstant()));
      line.append(String.format(" %-5s ", event.getLevel()));
    }
    String logger = event.getLoggerName();
    line.append(logger.substring(logger.lastIndexOf('.') + 1)).append(": ");
    line.append(Visible.of(event.getFormattedMessage()));
    if (event.getKeyValuePairs() != null) {
      for (KeyValuePair pair : event.getKeyValuePairs()) {
        pair(line, pair.key, String.valueOf(pair.value));
      }
    }
    if (event.getThrowableProxy() != null) {
      pair(line, "error", Cause.of(event.getThrowableProxy()));
    }
    return line.append('\n').toString();
  }

  private static void pair(StringBuilder line, String key, String value) {
    String quoted = Visible.of(value.replace("\\", "\\\\").replace("\"", "\\\""));
    line.append(' ').append(Visible.of(key)).append("=\"").append(quoted).append('"');
  }

  /** The numbers of syslog(3). */
  private static int priority(Level level) {
    if (level.isGreaterOrEqual(Level.ERROR)) {
      return 3;
    }
    return level.isGreaterOrEqual(Level.WARN) ? 4 : level.isGreaterOrEqual(Level.INFO) ? 6 : 7;
  }
}
