package witnessmark.config;

import java.time.Duration;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import witnessmark.decode.Poll;
import witnessmark.decode.Profile;
import witnessmark.desk.StationName;
import witnessmark.link.serial.Parity;
import witnessmark.link.serial.PortName;
import witnessmark.link.serial.SerialSettings;
import witnessmark.toml.Section;

/** Reads a {@code [[serial]]} section. */
final class SerialSection {
  private static final String PORT =
      "write e.g. \"/dev/ttyUSB0\", \"usb-serial:A600XYZ\" or \"usb:0403:6001\"";

  private final ConfigFile file;

  SerialSection(ConfigFile file) {
    this.file = file;
  }

  Optional<SerialConfig> read(Section s) {
    Optional<String> name = file.name(s);
    Optional<PortName> port = s.requiredRead("port", PORT, PortName::parse);
    Optional<String> station =
        s.requiredRead("station", "name the station it is for", StationName::check);
    Optional<Profile> profile = file.profile(s);
    int baud = (int) s.integer("baud", 50, 4_000_000).orElse(9600);
    int dataBits = (int) s.integer("data-bits", 7, 8).orElse(8);
    int stopBits = (int) s.integer("stop-bits", 1, 2).orElse(1);
    Parity parity =
        s.read("parity", "write none, odd or even", SerialSection::parity).orElse(Parity.NONE);
    s.finish();
    profile
        .filter(p -> p.frame().isEmpty())
        .ifPresent(
            p ->
                s.fault(
                    "profile",
                    "profile \"" + p.name() + "\" has no [frame], so a serial line cannot use it",
                    "say in it how frames are cut"));
    if (name.isEmpty() || port.isEmpty() || station.isEmpty() || profile.isEmpty()) {
      return Optional.empty();
    }
    Optional<Poll> poll = profile.get().poll();
    SerialSettings settings =
        new SerialSettings(
            name.get(),
            port.get(),
            baud,
            dataBits,
            stopBits,
            parity,
            poll.map(p -> p.send().toArray()),
            poll.map(Poll::every).orElse(Duration.ofSeconds(1)));
    return Optional.of(new SerialConfig(settings, station.get(), profile.get()));
  }

  private static Parity parity(String text) {
    return Arrays.stream(Parity.values())
        .filter(p -> p.name().toLowerCase(Locale.ROOT).equals(text))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("parity \"" + text + "\" is unknown"));
  }
}
