package witnessmark.debian;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is in the Debian package; how it behaves is {@code src/test/debian/trial.sh}'s to show. */
class DebianPackageIT {
  private static final Pattern LINK = Pattern.compile("\\]\\((?!https?:|#)([^)#]+)[^)]*\\)");

  @TempDir static Path unpacked;
  private static Path deb;

  @BeforeAll
  static void unpack() throws Exception {
    try (Stream<Path> built = Files.list(Path.of("target"))) {
      deb = built.filter(f -> f.toString().endsWith("_all.deb")).findFirst().orElseThrow();
    }
    run("dpkg-deb", "-R", deb.toString(), unpacked.toString());
  }

  private static String run(String... line) throws IOException, InterruptedException {
    Process process = new ProcessBuilder(line).redirectErrorStream(true).start();
    String out = new String(process.getInputStream().readAllBytes(), UTF_8);
    assertThat(process.waitFor()).as(String.join(" ", line) + "\n" + out).isZero();
    return out;
  }

  private static String text(String file) throws IOException {
    return Files.readString(unpacked.resolve(file));
  }

  @Test
  void itHoldsTheJarThatWasTested() throws Exception {
    assertThat(
            Files.mismatch(
                unpacked.resolve("usr/share/witnessmark/witnessmark.jar"),
                Path.of("target/witnessmark.jar")))
        .isEqualTo(-1);
  }

  @Test
  void everythingBelongsToRootAndOnlyProgramsMayBeRun() throws Exception {
    List<String> rights =
        run("dpkg-deb", "-c", deb.toString())
            .lines()
            .map(l -> l.split("\\s+"))
            .map(c -> c[0] + " " + c[1] + " " + c[5])
            .toList();
    assertThat(rights)
        .contains(
            "-rwxr-xr-x root/root ./usr/bin/witnessmark",
            "-rw-r--r-- root/root ./lib/systemd/system/witnessmark.service",
            "-rw-r--r-- root/root ./etc/witnessmark/shop.toml",
            "-rw-r--r-- root/root ./usr/share/man/man1/witnessmark.1.gz",
            "-rw-r--r-- root/root ./usr/share/bash-completion/completions/witnessmark",
            "-rw-r--r-- root/root ./usr/share/doc/witnessmark/operation.md",
            "-rw-r--r-- root/root ./usr/share/doc/witnessmark/bom.json.gz",
            "-rw-r--r-- root/root ./usr/share/doc/witnessmark/THIRD-PARTY.txt")
        .allMatch(
            r ->
                r.startsWith("drwxr-xr-x root/root ")
                    || r.startsWith("-rw-r--r-- root/root ")
                    || r.equals("-rwxr-xr-x root/root ./usr/bin/witnessmark"))
        .noneMatch(r -> r.contains(" ./var/"));
  }

  @Test
  void everyLinkOfItsDocumentsLeadsToOneOfIts() throws Exception {
    Path documents = unpacked.resolve("usr/share/doc/witnessmark");
    List<String> astray = new ArrayList<>();
    int links = 0;
    try (Stream<Path> files = Files.walk(documents)) {
      for (Path page : files.filter(f -> f.toString().endsWith(".md")).toList()) {
        Matcher link = LINK.matcher(Files.readString(page));
        while (link.find()) {
          links++;
          if (Files.notExists(page.resolveSibling(link.group(1)))) {
            astray.add(documents.relativize(page) + ": " + link.group(1));
          }
        }
      }
    }
    assertThat(links).isGreaterThan(100);
    assertThat(astray).isEmpty();
  }

  @Test
  void theShopsConfigurationIsItsOwn() throws Exception {
    assertThat(text("DEBIAN/conffiles")).isEqualTo("/etc/witnessmark/shop.toml\n");
  }

  @Test
  void itsScriptsAreScripts() throws Exception {
    for (String script : List.of("postinst", "prerm", "postrm")) {
      run("sh", "-n", unpacked.resolve("DEBIAN").resolve(script).toString());
    }
    run("bash", "-n", unpacked.resolve("usr/share/bash-completion/completions/witnessmark") + "");
  }

  @Test
  void itsLauncherStartsTheProgram() throws Exception {
    String home = unpacked.resolve("usr/share/witnessmark").toString();
    Path launcher = unpacked.resolve("launcher");
    String moved = text("usr/bin/witnessmark").replace("/usr/share/witnessmark", home);
    assertThat(moved).contains(home);
    Files.writeString(launcher, moved);
    String version = run("dpkg-deb", "-f", deb.toString(), "Version").strip();
    assertThat(run("sh", launcher.toString(), "--version"))
        .isEqualTo("witnessmark " + version + "\n");
    assertThat(run("sh", launcher.toString(), "licences"))
        .contains("org.jfree:jfreechart", "com.h2database:h2-mvstore", "net.java.dev.jna:jna");
  }

  @Test
  void theJarKeepsTheNoticesOfWhatIsInside() throws Exception {
    Path jar = unpacked.resolve("usr/share/witnessmark/witnessmark.jar");
    try (ZipFile inside = new ZipFile(jar.toFile())) {
      assertThat(inside.stream().map(ZipEntry::getName))
          .contains(
              "META-INF/third-party/pdfbox-jar/META-INF/NOTICE",
              "META-INF/third-party/jna-jar/META-INF/LGPL2.1",
              "META-INF/third-party/jna-jar/META-INF/AL2.0");
    }
  }
}
