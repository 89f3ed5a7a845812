package witnessmark.log;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.recovery.RecoveryListener;
import ch.qos.logback.core.recovery.ResilientOutputStreamBase;
import ch.qos.logback.core.rolling.RollingFileAppender;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The log's file. When it cannot be written any more, or was taken away, that is said once on
 * standard error, where the log goes as well, and so is that it works again.
 */
final class KeptFile extends RollingFileAppender<ILoggingEvent> implements RecoveryListener {
  private static final long LOOK_MILLIS = 1_000;

  private long lookedAt;
  private boolean broken;

  @Override
  public void openFile(String name) throws IOException {
    super.openFile(name);
    if (getOutputStream() instanceof ResilientOutputStreamBase stream) {
      stream.addRecoveryListener(this);
    }
  }

  @Override
  protected void subAppend(ILoggingEvent event) {
    long since = event.getTimeStamp() - lookedAt;
    if (since < 0 || since >= LOOK_MILLIS) {
      lookedAt = event.getTimeStamp();
      look(Path.of(getFile()));
    }
    super.subAppend(event);
  }

  /** A file that was taken away is written to without complaint, and nobody ever sees it. */
  private void look(Path file) {
    if (Files.exists(file)) {
      return;
    }
    Path directory = file.toAbsolutePath().getParent();
    if (!Files.isDirectory(directory)) {
      failed("there is no directory " + directory);
      return;
    }
    try {
      openFile(getFile());
      worked();
    } catch (IOException e) {
      failed(e.getMessage());
    }
  }

  @Override
  public void newFailure(IOException e) {
    failed(e.getMessage());
  }

  @Override
  public void recoveryOccured() {
    worked();
  }

  private void failed(String reason) {
    if (!broken) {
      broken = true;
      logger()
          .atError()
          .addKeyValue("file", getFile())
          .addKeyValue("reason", reason)
          .log("the log file cannot be written; what is logged stands here alone");
    }
  }

  private void worked() {
    if (broken) {
      broken = false;
      logger().atWarn().addKeyValue("file", getFile()).log("the log file is written again");
    }
  }

  /** What it logs may come back here; it is said once, so that it does so once. */
  private Logger logger() {
    return ((LoggerContext) getContext()).getLogger(KeptFile.class);
  }
}
