package wrenchsim;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import wrenchsim.mqtt.BrokerLink;
import wrenchsim.mqtt.MqttSender;
import wrenchsim.truth.Truth;
import wrenchsim.wire.JsonLine;

/** The open loop over MQTT: numbered events as fast as asked, until the broker has all of them. */
@Command(
    name = "burst",
    mixinStandardHelpOptions = true,
    sortOptions = false,
    description = {
      "Publishes numbered events as fast as asked, until the broker has all of them.",
      "After a lost connection, what was not acknowledged is sent again."
    },
    footer = {"", "Example:", "  ${COMMAND-FULL-NAME} --station bench-1 --count 1000"})
final class BurstCommand implements Callable<Integer> {
  @Mixin private BrokerOptions broker;
  @Mixin private Series series;
  @Mixin private RunOptions run;

  @Option(
      names = "--wrench",
      paramLabel = "WRENCH",
      defaultValue = "TW-0417",
      converter = Converters.OfWrench.class,
      description = "The wrench, as in 'shop --help' (default: ${DEFAULT-VALUE}).")
  private WrenchOption wrench;

  @Override
  public Integer call() throws IOException {
    series.refuseWrong(wrench);
    try (Truth truth = run.tellingFile();
        BrokerLink link = broker.link()) {
      link.open();
      long began = System.nanoTime();
      MqttSender sender = new MqttSender(link, broker.station.torque());
      series.send(wrench, run, truth, sender, () -> {});
      link.awaitAcknowledged();
      double seconds = (System.nanoTime() - began) / 1e9;
      System.out.println(summary(seconds, link.reconnections()));
    }
    return 0;
  }

  private String summary(double seconds, int reconnections) {
    String took = Series.digits(seconds);
    if (run.json) {
      return new JsonLine()
          .put("command", "burst")
          .put("wrench", wrench.spec().serial())
          .put("first", series.first)
          .put("last", series.last())
          .put("acknowledged", series.count)
          .put("seconds", took)
          .put("reconnections", reconnections)
          .toString();
    }
    return "burst: the broker has events %d to %d of %s (%d in %s s, %.0f/s, %d reconnections)"
        .formatted(
            series.first,
            series.last(),
            wrench.spec().serial(),
            series.count,
            took,
            series.count / seconds,
            reconnections);
  }
}
