package witnessmark.log;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.LoggingEvent;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.event.KeyValuePair;

class LayoutTest {
  private static final String EVIL = "x\n<0>Bridge: forged\r\u001b[2J\u009b31m\u202e\u2028\"y\\";

  private static LoggingEvent event(Level level, String value, Throwable thrown) {
    Logger logger = new LoggerContext().getLogger("witnessmark.pipeline.Loop");
    LoggingEvent event =
        new LoggingEvent("", logger, level, "refused, and on record", thrown, null);
    event.setInstant(Instant.parse("2026-11-26T10:02:03.004Z"));
    event.addKeyValuePair(new KeyValuePair("source", value));
    return event;
  }

  @Test
  void aLineForPeopleHasItsTimeAndItsKeys() {
    assertThat(new TextLayout(false).doLayout(event(Level.WARN, "serial:cable", null)))
        .isEqualTo(
            "2026-11-26T10:02:03.004Z WARN  Loop: refused, and on record source=\"serial:cable\"\n");
  }

  @ParameterizedTest
  @CsvSource({"ERROR,3", "WARN,4", "INFO,6", "DEBUG,7", "TRACE,7"})
  void aLineForTheJournalHasAPriorityAndNoTime(String level, String priority) {
    assertThat(new TextLayout(true).doLayout(event(Level.valueOf(level), "a", null)))
        .isEqualTo("<" + priority + ">Loop: refused, and on record source=\"a\"\n");
  }

  @Test
  void jsonIsOneObjectALine() throws Exception {
    String line =
        new JsonLayout().doLayout(event(Level.INFO, EVIL, new IllegalStateException(EVIL)));
    assertThat(line.chars().filter(c -> c == '\n').count()).isEqualTo(1);
    JsonNode read = new ObjectMapper().readTree(line);
    assertThat(read.path("time").asText()).isEqualTo("2026-11-26T10:02:03.004Z");
    assertThat(read.path("level").asText()).isEqualTo("INFO");
    assertThat(read.path("logger").asText()).isEqualTo("Loop");
    assertThat(read.path("message").asText()).isEqualTo("refused, and on record");
    assertThat(read.path("source").asText()).isEqualTo(EVIL);
    assertThat(read.path("error").asText()).startsWith("java.lang.IllegalStateException: " + EVIL);
  }

  @ParameterizedTest
  @EnumSource(Form.class)
  void noValueBeginsALineOrReachesTheTerminal(Form form) {
    Throwable thrown = new IllegalStateException(EVIL, new RuntimeException(EVIL));
    String line = Setup.layout(form).doLayout(event(Level.ERROR, EVIL, thrown));
    assertThat(line).endsWith("\n");
    assertThat(line.substring(0, line.length() - 1))
        .matches("[ -~]*")
        .contains("caused by java.lang.RuntimeException");
  }

  @Test
  void aValueCannotEndItsOwnQuotes() {
    assertThat(new TextLayout(true).doLayout(event(Level.INFO, "a\" level=\"b\\", null)))
        .endsWith("source=\"a\\\" level=\\\"b\\\\\"\n");
  }
}
