package witnessmark.http;

import io.prometheus.metrics.core.metrics.Counter;
import io.prometheus.metrics.core.metrics.Histogram;
import io.prometheus.metrics.model.registry.PrometheusRegistry;
import io.prometheus.metrics.model.snapshots.Unit;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Watch;
import witnessmark.torque.Verdict;

/** Counts what the writer puts on record. */
public final class Recorded implements Watch {
  private static final String UNJUDGED = "none";

  private final PrometheusRegistry registry = new PrometheusRegistry();
  private final Counter entries;
  private final Counter readings;
  private final Counter refused;
  private final Counter repeats;
  private final Histogram commits;
  private volatile long lastCommit = System.nanoTime();

  public Recorded() {
    entries =
        Counter.builder()
            .name("witnessmark_entries_recorded")
            .help("Entries that this bridge has put on record since it started.")
            .register(registry);
    readings =
        Counter.builder()
            .name("witnessmark_readings")
            .help("Torque events recorded since the start, by verdict; none: no fastener found.")
            .labelNames("verdict")
            .register(registry);
    refused =
        Counter.builder()
            .name("witnessmark_messages_refused")
            .help("Messages recorded as refused since the start, by the part at fault.")
            .labelNames("reason")
            .register(registry);
    repeats =
        Counter.builder()
            .name("witnessmark_readings_repeated")
            .help("Repeats of readings on record since the start; they are not stored again.")
            .register(registry);
    commits =
        Histogram.builder()
            .name("witnessmark_commit_duration_seconds")
            .help("Time to decide about a group of messages and to have it on disk.")
            .unit(Unit.SECONDS)
            .classicOnly()
            .classicUpperBounds(0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5)
            .register(registry);
    // a series that is there from the start shows its first step
    Stream.concat(Stream.of(UNJUDGED), Arrays.stream(Verdict.values()).map(Verdict::code))
        .forEach(readings::initLabelValues);
    RefusalClass.codes().forEach(refused::initLabelValues);
  }

  @Override
  public void recorded(List<Outcome> outcomes, int statements, long nanos) {
    lastCommit = System.nanoTime();
    commits.observe(Unit.nanosToSeconds(nanos));
    entries.inc(statements);
    for (Outcome outcome : outcomes) {
      if (outcome.repeat()) {
        repeats.inc();
      }
      entries.inc(outcome.entries().size());
      outcome.entries().forEach(this::count);
    }
  }

  private void count(Entry entry) {
    if (entry instanceof Entry.TorqueTaken t) {
      readings.labelValues(verdict(t.judged())).inc();
    } else if (entry instanceof Entry.Refused r) {
      refused.labelValues(RefusalClass.of(r.reason()).code()).inc();
    }
  }

  private static String verdict(Judged judged) {
    return judged.announced().map(Verdict::code).orElse(UNJUDGED);
  }

  /** Seconds since the last commit; before the first, since the start. */
  double idleSeconds() {
    return Unit.nanosToSeconds(System.nanoTime() - lastCommit);
  }

  PrometheusRegistry registry() {
    return registry;
  }
}
