package wrenchsim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import wrenchsim.mqtt.BrokerAddress;
import wrenchsim.mqtt.BrokerLink;
import wrenchsim.wire.Topics;

/** The options that say where the broker and the station are. */
final class BrokerOptions {
  @Spec(Spec.Target.MIXEE)
  private CommandSpec spec;

  @Option(
      names = "--broker",
      paramLabel = "URI",
      defaultValue = "tcp://127.0.0.1:1883",
      description =
          "The MQTT broker, tcp://HOST:PORT or ssl://HOST:PORT (default: ${DEFAULT-VALUE}).")
  private String broker;

  @Option(names = "--user", paramLabel = "NAME", description = "The user name at the broker.")
  private Optional<String> user;

  @Option(
      names = "--password-file",
      paramLabel = "FILE",
      description = "A file whose first line is the password at the broker.")
  private Optional<Path> passwordFile;

  @Option(
      names = "--station",
      paramLabel = "STATION",
      required = true,
      converter = Converters.OfStation.class,
      description = "The station to work at, e.g. bench-1.")
  Topics station;

  @Option(
      names = "--give-up",
      paramLabel = "SECONDS",
      defaultValue = "60",
      description = "How long the broker may be away (default: ${DEFAULT-VALUE}).")
  private int giveUp;

  /** The link to the broker, not open yet. */
  BrokerLink link() throws IOException {
    Optional<String> password = Optional.empty();
    if (passwordFile.isPresent()) {
      try (var lines = Files.lines(passwordFile.get())) {
        password = lines.findFirst();
      }
    }
    try {
      return new BrokerLink(
          new BrokerAddress(broker, user, password), Duration.ofSeconds(Math.max(1, giveUp)));
    } catch (IllegalArgumentException e) {
      throw new ParameterException(spec.commandLine(), e.getMessage());
    }
  }
}
