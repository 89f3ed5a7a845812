package witnessmark.config;

import witnessmark.decode.Profile;
import witnessmark.link.serial.SerialSettings;

/** A serial port whose bytes a profile reads as torque events or scans of a station. */
public record SerialConfig(SerialSettings settings, String station, Profile profile) {}
