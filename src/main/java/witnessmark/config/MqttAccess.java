package witnessmark.config;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import witnessmark.toml.Section;

/**
 * As whom a broker lets us in, and by which certificates.
 *
 * @param passwordFile where the password was read from, if from a file
 */
record MqttAccess(
    Optional<String> user,
    Optional<String> password,
    Optional<Path> passwordFile,
    Optional<Path> ca,
    Optional<Path> cert,
    Optional<Path> key) {
  /** The files that only the right people may read. */
  List<Path> secrets() {
    return Stream.concat(passwordFile.stream(), key.stream()).toList();
  }

  /**
   * Reads the keys; nothing where they do not fit together.
   *
   * @param tls whether the url asks for it
   */
  static Optional<MqttAccess> read(ConfigFile file, Section s, boolean tls) {
    Optional<Path> from = s.read("password-file", ConfigFile.PATH, file::path);
    MqttAccess access =
        new MqttAccess(
            s.text("user"),
            password(file, s, from),
            from,
            existing(file, s, "ca-file"),
            existing(file, s, "cert-file"),
            existing(file, s, "key-file"));
    return access.together(s, tls) ? Optional.of(access) : Optional.empty();
  }

  private boolean together(Section s, boolean tls) {
    boolean fits = true;
    if (password.isPresent() && user.isEmpty()) {
      fits = false;
      if (!s.has("user")) {
        s.fault(
            passwordFile.isPresent() ? "password-file" : "password-env",
            "a password needs a user",
            "add user = \"NAME\", as the broker knows it");
      }
    }
    if (s.has("cert-file") != s.has("key-file")) {
      fits = false;
      boolean certificate = s.has("cert-file");
      s.fault(
          certificate ? "cert-file" : "key-file",
          "a client certificate and its key belong together",
          "add " + (certificate ? "key-file" : "cert-file") + ", or leave both out");
    }
    for (String certificate : tls ? List.<String>of() : List.of("ca-file", "cert-file")) {
      if (s.has(certificate)) {
        fits = false;
        s.fault(
            certificate,
            certificate + " needs a url that begins with ssl://",
            "write ssl:// and the port that encrypts in url, or leave " + certificate + " out");
      }
    }
    return fits;
  }

  private static Optional<String> password(ConfigFile file, Section s, Optional<Path> from) {
    Optional<String> variable = s.text("password-env");
    if (variable.isPresent() && from.isPresent()) {
      s.fault("password-env", "there are two sources of the password", "keep one of them");
    }
    if (variable.isPresent()) {
      return fromEnvironment(file, s, variable.get());
    }
    return from.flatMap(path -> fromFile(s, path));
  }

  private static Optional<String> fromEnvironment(ConfigFile file, Section s, String variable) {
    Optional<String> value = file.variable(variable);
    if (value.isEmpty()) {
      s.fault("password-env", "the environment has no " + variable, "set it, or use password-file");
    } else if (value.get().isEmpty()) {
      s.fault("password-env", variable + " is empty", "set it to the password");
    }
    return value;
  }

  private static Optional<String> fromFile(Section s, Path path) {
    try {
      String password = Files.readString(path).strip();
      if (password.isEmpty()) {
        s.fault(
            "password-file",
            path + " is empty",
            "write the password that the broker knows into it");
      }
      return Optional.of(password);
    } catch (IOException e) {
      Unreadable.fault(s, "password-file", path.toString(), e);
      return Optional.empty();
    }
  }

  /** The path is given back even where it cannot be read, so that one fault makes no second. */
  private static Optional<Path> existing(ConfigFile file, Section s, String key) {
    Optional<Path> path = s.read(key, ConfigFile.PATH, file::path);
    path.ifPresent(p -> Unreadable.check(s, key, p));
    return path;
  }
}
