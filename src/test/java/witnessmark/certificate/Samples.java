package witnessmark.certificate;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import witnessmark.pipeline.Bench;

/** Writes certificates to look at: {@code Samples DIRECTORY}. */
final class Samples {
  private Samples() {}

  public static void main(String[] args) throws IOException {
    Path directory = Files.createDirectories(Path.of(args[0]));
    for (int fasteners : new int[] {1, 30, 120}) {
      Bench bench = Cases.closed(fasteners, Cases.UNIT, "Rear-axle module");
      write(directory, bench, Cases.UNIT, Integer.toString(fasteners));
    }
    write(directory, Cases.begun(30, Cases.UNIT, "Rear-axle module"), Cases.UNIT, "draft");
    write(directory, Cases.abandoned(5), Cases.UNIT, "abandoned");
    String scripts = "Αρ-26-Ж-中文-" + "long-name-".repeat(4) + "9";
    write(
        directory,
        Cases.closed(3, scripts, "Modul osi, Μονάδα άξονα, Модуль оси, 后轴模块, " + "w".repeat(60)),
        scripts,
        "scripts");
  }

  private static void write(Path directory, Bench bench, String unit, String name)
      throws IOException {
    Path log = Files.createTempDirectory("samples");
    Proved proved = Cases.proved(log.resolve("log"), bench, unit);
    for (Paper paper : Paper.values()) {
      Path file =
          directory.resolve(name + "-" + paper.name().toLowerCase(java.util.Locale.ROOT) + ".pdf");
      Files.write(file, Certificate.render(proved, paper, Cases.PROGRAM));
      System.out.println(file);
    }
  }
}
