package witnessmark.http;

import io.prometheus.metrics.config.EscapingScheme;
import io.prometheus.metrics.core.metrics.CounterWithCallback;
import io.prometheus.metrics.core.metrics.GaugeWithCallback;
import io.prometheus.metrics.core.metrics.Info;
import io.prometheus.metrics.expositionformats.PrometheusTextFormatWriter;
import io.prometheus.metrics.instrumentation.jvm.JvmGarbageCollectorMetrics;
import io.prometheus.metrics.instrumentation.jvm.JvmMemoryMetrics;
import io.prometheus.metrics.instrumentation.jvm.JvmRuntimeInfoMetric;
import io.prometheus.metrics.instrumentation.jvm.JvmThreadsMetrics;
import io.prometheus.metrics.instrumentation.jvm.ProcessMetrics;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;
import witnessmark.link.LinkState;
import witnessmark.link.LinkStatus;

/** The bridge in figures, in the text format of Prometheus. */
final class Figures {
  static final String TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final Observed bridge;
  private final Recorded recorded;
  private final PrometheusRegistry registry;
  private final PrometheusTextFormatWriter writer = PrometheusTextFormatWriter.create();
  private Optional<LedgerNow> ledger = Optional.empty();

  Figures(Observed bridge, Recorded recorded) {
    this.bridge = bridge;
    this.recorded = recorded;
    this.registry = recorded.registry();
    writers();
    links();
    log();
    disk();
    Info.builder()
        .name("witnessmark_build_info")
        .help("The program's version.")
        .labelNames("version")
        .register(registry)
        .setLabelValues(Observed.version());
    JvmMemoryMetrics.builder().register(registry);
    JvmGarbageCollectorMetrics.builder().register(registry);
    JvmThreadsMetrics.builder().register(registry);
    JvmRuntimeInfoMetric.builder().register(registry);
    ProcessMetrics.builder().register(registry);
  }

  /** All figures as of now. */
  synchronized byte[] text() {
    ledger = LedgerNow.look(bridge);
    ByteArrayOutputStream out = new ByteArrayOutputStream(16_384);
    try {
      writer.write(out, registry.scrape(), EscapingScheme.UNDERSCORE_ESCAPING);
    } catch (IOException e) {
      throw new UncheckedIOException("bytes can always be kept", e);
    }
    return out.toByteArray();
  }

  private void writers() {
    gauge(
        "witnessmark_recording",
        "1 while what arrives can be put on record, else 0.",
        g -> g.call(bridge.counts().trouble() == null ? 1 : 0));
    gauge(
        "witnessmark_degraded",
        "1 while the health message says degraded, else 0.",
        g -> g.call(bridge.health().get().key().equals("ok") ? 0 : 1));
    gauge(
        "witnessmark_queue_messages",
        "Messages that wait for the disk.",
        g -> g.call(bridge.counts().waiting()));
    gauge(
        "witnessmark_queue_fill_ratio",
        "How much of its room is taken by messages that their sender keeps, and by those that"
            + " only the bridge has.",
        g -> {
          g.call(bridge.fill().apply(true), "sender");
          g.call(bridge.fill().apply(false), "bridge");
        },
        "kept_by");
    CounterWithCallback.builder()
        .name("witnessmark_messages_not_kept")
        .help("Messages that could neither be recorded nor kept since the start, and are lost.")
        .callback(c -> c.call(bridge.counts().notKept()))
        .register(registry);
    gauge(
        "witnessmark_last_commit_age_seconds",
        "Time since something was last put on record; before the first time, since the start.",
        g -> g.call(recorded.idleSeconds()));
  }

  private void links() {
    gauge(
        "witnessmark_link_state",
        "1 for the state that the link is in, 0 for the others.",
        g -> bridge.links().get().forEach(l -> states(g, l)),
        "link",
        "state");
    gauge(
        "witnessmark_publish_lag_entries",
        "Entries that the broker was not told about yet; up to a second old.",
        g -> ledger.ifPresent(l -> l.lag().forEach((link, lag) -> g.call(lag, link))),
        "link");
  }

  private static void states(GaugeWithCallback.Callback gauge, LinkStatus link) {
    for (LinkState state : LinkState.values()) {
      gauge.call(link.state() == state ? 1 : 0, link.name(), state.name().toLowerCase(Locale.ROOT));
    }
  }

  private void log() {
    gauge(
        "witnessmark_ledger_entries",
        "Entries in the log, those of other processes too.",
        g -> ledger.ifPresent(l -> g.call(l.entries())));
    gauge(
        "witnessmark_jobs_open",
        "Jobs that are not finished, suspended ones too.",
        g -> ledger.ifPresent(l -> g.call(l.openJobs())));
  }

  private void disk() {
    Path database = bridge.files().database();
    Path wal = database.resolveSibling(database.getFileName() + "-wal");
    gauge(
        "witnessmark_ledger_file_bytes",
        "Size of the log's files.",
        g -> List.of(database, wal).forEach(f -> size(g, f)),
        "file");
    gauge(
        "witnessmark_disk_free_bytes",
        "Room on the disk of the data directory for the user who runs the bridge.",
        this::free);
  }

  private static void size(GaugeWithCallback.Callback gauge, Path file) {
    try {
      gauge.call(Files.exists(file) ? Files.size(file) : 0, file.getFileName().toString());
    } catch (IOException e) {
      return; // no figure is better than a wrong one
    }
  }

  private void free(GaugeWithCallback.Callback gauge) {
    try {
      gauge.call(Files.getFileStore(bridge.files().directory()).getUsableSpace());
    } catch (IOException e) {
      return; // no figure is better than a wrong one
    }
  }

  private void gauge(
      String name, String help, Consumer<GaugeWithCallback.Callback> callback, String... labels) {
    GaugeWithCallback.builder()
        .name(name)
        .help(help)
        .labelNames(labels)
        .callback(callback)
        .register(registry);
  }
}
