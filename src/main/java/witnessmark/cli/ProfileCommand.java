package witnessmark.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import witnessmark.decode.Broken;
import witnessmark.decode.Decoded;
import witnessmark.decode.Frame;
import witnessmark.decode.Framer;
import witnessmark.decode.Malformed;
import witnessmark.decode.Profile;
import witnessmark.decode.ProfileDecoder;
import witnessmark.decode.ProfileFile;
import witnessmark.decode.Scanned;
import witnessmark.decode.Torqued;
import witnessmark.decode.Whole;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Visible;

/** Profiles, before they meet a wrench. */
@Command(
    name = "profile",
    mixinStandardHelpOptions = true,
    description = "Try a profile against captured bytes.",
    footer = {"", "Example:  witnessmark profile try my-wrench.toml captured.bin"})
final class ProfileCommand {
  @Spec private CommandSpec spec;

  @Command(
      name = "try",
      mixinStandardHelpOptions = true,
      description = {
        "Read a file of captured bytes through a profile and print what each frame says.",
        "Exit status 1 when anything in it is refused."
      },
      footer = {"", "Example:  witnessmark profile try my-wrench.toml captured.bin"})
  int attempt(
      @Parameters(paramLabel = "PROFILE") Path profileFile,
      @Parameters(paramLabel = "FILE") Path captured) {
    Profile profile = ProfileFile.parse(profileFile.toString(), Files.text(profileFile));
    byte[] bytes = Files.bytes(captured);
    ProfileDecoder decoder = new ProfileDecoder(profile);
    List<Decoded> all = new ArrayList<>();
    if (profile.frame().isPresent()) {
      Framer framer = new Framer(profile.frame().get());
      List<Frame> frames = new ArrayList<>(framer.feed(bytes, bytes.length));
      frames.addAll(framer.end());
      frames.forEach(f -> all.addAll(decode(decoder, f)));
    } else {
      all.addAll(decoder.decode(bytes));
    }
    PrintWriter out = spec.commandLine().getOut();
    all.forEach(d -> out.println(Visible.of(text(d))));
    long refused = all.stream().filter(Malformed.class::isInstance).count();
    String read = (all.size() - refused) + (profile.scans() ? " scans, " : " events, ");
    out.println(read + refused + " refused.");
    return refused == 0 && !all.isEmpty() ? Exit.YES : Exit.NO;
  }

  private static List<Decoded> decode(ProfileDecoder decoder, Frame frame) {
    if (frame instanceof Whole whole) {
      return decoder.decode(whole.bytes());
    } else if (frame instanceof Broken broken) {
      return List.of(new Malformed(broken.reason(), broken.sample()));
    }
    throw new IllegalStateException("nothing is done with " + frame.getClass());
  }

  private static String text(Decoded decoded) {
    if (decoded instanceof Torqued t) {
      TorqueEvent e = t.event();
      return e.wrench()
          + (e.number().isPresent() ? "  event " + e.number().getAsLong() : "")
          + e.time().map(i -> "  " + i).orElse("")
          + "  "
          + e.torque()
          + e.angle().map(a -> "  " + a + " degrees").orElse("")
          + "  "
          + e.direction().code()
          + e.fastener().map(f -> "  on " + f).orElse("")
          + e.operator().map(o -> "  by " + o).orElse("");
    } else if (decoded instanceof Scanned s) {
      return "scan  " + s.scan() + s.operator().map(o -> "  by " + o).orElse("");
    } else if (decoded instanceof Malformed m) {
      return "REFUSED " + m.sample().length() + " bytes: " + m.reason();
    }
    throw new IllegalStateException("no line for " + decoded.getClass());
  }
}
