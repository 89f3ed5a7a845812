package witnessmark.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.util.LogbackMDCAdapter;
import ch.qos.logback.core.read.ListAppender;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class KeptFileTest {
  @TempDir Path directory;
  private final LoggerContext context = new LoggerContext();
  private final ListAppender<ILoggingEvent> console = new ListAppender<>();

  @AfterEach
  void end() {
    context.stop();
  }

  private Logger logging(Path file) {
    context.setMDCAdapter(new LogbackMDCAdapter());
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    console.start();
    root.addAppender(console);
    root.addAppender(Setup.file(context, Form.TEXT, file.toString()));
    return root;
  }

  private List<String> told() {
    return console.list.stream().map(ILoggingEvent::getMessage).toList();
  }

  private static void pause() throws InterruptedException {
    Thread.sleep(1_100);
  }

  @Test
  void aDirectoryThatIsGoneIsToldOnceAndAgainWhenItIsBack() throws Exception {
    Path logs = Files.createDirectory(directory.resolve("logs"));
    Logger logger = logging(logs.resolve("bridge.log"));
    logger.warn("one");
    Files.delete(logs.resolve("bridge.log"));
    Files.delete(logs);
    pause();
    logger.warn("two");
    pause();
    logger.warn("three");
    Files.createDirectory(logs);
    pause();
    logger.warn("four");
    logger.warn("five");
    assertThat(told())
        .containsExactly(
            "one",
            "two",
            "the log file cannot be written; what is logged stands here alone",
            "three",
            "four",
            "the log file is written again",
            "five");
    assertThat(console.list.get(2).getKeyValuePairs().toString())
        .contains("there is no directory " + logs);
    assertThat(Files.readAllLines(logs.resolve("bridge.log")))
        .satisfiesExactly(
            l -> assertThat(l).contains(" WARN  KeptFile: the log file is written again file="),
            l -> assertThat(l).endsWith(": four"),
            l -> assertThat(l).endsWith(": five"));
  }
}
