package witnessmark.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.Configurator;
import ch.qos.logback.classic.spi.ConfiguratorRank;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.Appender;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.Layout;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.rolling.SizeAndTimeBasedRollingPolicy;
import ch.qos.logback.core.spi.ContextAwareBase;
import ch.qos.logback.core.status.NopStatusListener;
import ch.qos.logback.core.util.FileSize;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Sets the logging library up in code: reading a file of its own form takes several times as long,
 * which the start of every command would wait for.
 */
@ConfiguratorRank(ConfiguratorRank.CUSTOM_HIGH_PRIORITY)
public final class Setup extends ContextAwareBase implements Configurator {
  /** Bounds of {@code --log-file}. */
  private static final long FILE_BYTES = 10_000_000;

  private static final long ALL_BYTES = 200_000_000;
  private static final int DAYS = 30;

  @Override
  public ExecutionStatus configure(LoggerContext context) {
    if (getClass().getResource("/logback-test.xml") != null) {
      return ExecutionStatus.INVOKE_NEXT_IF_ANY;
    }
    context.getStatusManager().add(new NopStatusListener());
    Form form = Form.valueOf(System.getProperty(Logs.FORM, Form.TEXT.name()));
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    root.setLevel(Level.toLevel(System.getProperty(Logs.LEVEL), Level.WARN));
    root.addAppender(console(context, form));
    String file = System.getProperty(Logs.FILE);
    if (file != null) {
      root.addAppender(file(context, form, file));
    }
    // they warn about fonts and files that certificates deal with themselves
    for (String library : List.of("org.apache.pdfbox", "org.apache.fontbox")) {
      context.getLogger(library).setLevel(Level.OFF);
    }
    return ExecutionStatus.DO_NOT_INVOKE_NEXT_IF_ANY;
  }

  static Layout<ILoggingEvent> layout(Form form) {
    return switch (form) {
      case TEXT -> new TextLayout(false);
      case JSON -> new JsonLayout();
      case JOURNAL -> new TextLayout(true);
    };
  }

  private static Appender<ILoggingEvent> console(LoggerContext context, Form form) {
    ConsoleAppender<ILoggingEvent> console = new ConsoleAppender<>();
    console.setContext(context);
    console.setName("standard error");
    console.setTarget("System.err");
    console.setEncoder(encoder(context, form));
    console.start();
    return console;
  }

  static Appender<ILoggingEvent> file(LoggerContext context, Form form, String file) {
    KeptFile appender = new KeptFile();
    appender.setContext(context);
    appender.setName("file");
    appender.setFile(file);
    SizeAndTimeBasedRollingPolicy<ILoggingEvent> policy = new SizeAndTimeBasedRollingPolicy<>();
    policy.setContext(context);
    policy.setParent(appender);
    policy.setFileNamePattern(file.replace("%", "\\%") + ".%d{yyyy-MM-dd}.%i");
    policy.setMaxFileSize(new FileSize(Long.getLong("witnessmark.log.file.bytes", FILE_BYTES)));
    policy.setMaxHistory(DAYS);
    policy.setTotalSizeCap(new FileSize(Long.getLong("witnessmark.log.all.bytes", ALL_BYTES)));
    policy.start();
    appender.setRollingPolicy(policy);
    // the journal's priorities mean nothing in a file
    appender.setEncoder(encoder(context, form == Form.JOURNAL ? Form.TEXT : form));
    appender.start();
    return appender;
  }

  private static LayoutWrappingEncoder<ILoggingEvent> encoder(LoggerContext context, Form form) {
    Layout<ILoggingEvent> layout = layout(form);
    layout.setContext(context);
    layout.start();
    LayoutWrappingEncoder<ILoggingEvent> encoder = new LayoutWrappingEncoder<>();
    encoder.setContext(context);
    encoder.setCharset(StandardCharsets.UTF_8);
    encoder.setLayout(layout);
    encoder.start();
    return encoder;
  }
}
