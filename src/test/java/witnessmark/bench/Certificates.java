package witnessmark.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A certificate authority of a test, made with openssl, and what it signs. */
public final class Certificates {
  private static final List<String> EC = List.of("ec", "-pkeyopt", "ec_paramgen_curve:P-256");
  private static final List<String> RSA = List.of("rsa:2048");

  private final Path directory;

  private Certificates(Path directory) {
    this.directory = directory;
  }

  /** Makes a new authority whose files lie in the directory. */
  public static Certificates authority(Path directory) {
    try {
      Certificates made = new Certificates(Files.createDirectories(directory));
      made.request(EC, "ca", "-x509", "-days", "2");
      return made;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** The authority's own certificate. */
  public Path ca() {
    return directory.resolve("ca.pem");
  }

  /** Signs a certificate with an EC key: {@code NAME.pem} and {@code NAME.key}. */
  public void sign(String name, String alternativeName) {
    sign(EC, name, alternativeName, 2);
  }

  /** The same with an RSA key. */
  public void signRsa(String name, String alternativeName) {
    sign(RSA, name, alternativeName, 2);
  }

  /** A certificate that was over before it began. */
  public void signExpired(String name, String alternativeName) {
    sign(EC, name, alternativeName, -1);
  }

  /** The certificate signed under the name. */
  public Path certificate(String name) {
    return directory.resolve(name + ".pem");
  }

  /** Its private key, PKCS #8. */
  public Path key(String name) {
    return directory.resolve(name + ".key");
  }

  /** Runs openssl in the directory. */
  public void openssl(List<String> arguments) {
    List<String> command = new ArrayList<>(List.of("openssl"));
    command.addAll(arguments);
    try {
      Process openssl =
          new ProcessBuilder(command)
              .directory(directory.toFile())
              .redirectErrorStream(true)
              .redirectOutput(directory.resolve("openssl.log").toFile())
              .start();
      if (Exit.await(openssl) != 0) {
        throw new IllegalStateException(
            command + ": " + Files.readString(directory.resolve("openssl.log")));
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void sign(List<String> kind, String name, String alternativeName, int days) {
    request(kind, name);
    try {
      Files.write(
          directory.resolve("extensions"), ("subjectAltName=" + alternativeName).getBytes(UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    openssl(
        List.of(
            "x509",
            "-req",
            "-in",
            name + ".csr",
            "-CA",
            "ca.pem",
            "-CAkey",
            "ca.key",
            "-CAcreateserial",
            "-days",
            "" + days,
            "-extfile",
            "extensions",
            "-out",
            name + ".pem"));
  }

  private void request(List<String> kind, String name, String... more) {
    List<String> arguments = new ArrayList<>(List.of("req", "-newkey"));
    arguments.addAll(kind);
    arguments.addAll(List.of("-nodes", "-subj", "/CN=" + name, "-keyout", name + ".key", "-out"));
    arguments.add(name + (more.length > 0 ? ".pem" : ".csr"));
    arguments.addAll(List.of(more));
    openssl(arguments);
  }
}
