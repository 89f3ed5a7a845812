package witnessmark.stats;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.regex.Pattern;

/**
 * NIST's Statistical Reference Datasets, univariate, from the test jar of Commons Math 3.6.1. The
 * files have two forms: NIST's own, whose values follow after 60 lines of heading, and one with
 * headings behind # and certified figures as name = value.
 */
final class CertifiedData {
  private static final Pattern NUMBER = Pattern.compile("[-+]?[0-9]*\\.?[0-9]+([eE][-+]?[0-9]+)?");

  private CertifiedData() {}

  static List<Double> values(String set) {
    List<String> lines = lines(set);
    boolean own = lines.stream().noneMatch(l -> l.startsWith("#"));
    return lines.stream()
        .skip(own ? 60 : 0)
        .map(String::strip)
        .filter(l -> NUMBER.matcher(l).matches())
        .map(Double::valueOf)
        .toList();
  }

  private static List<String> lines(String set) {
    String name = "/org/apache/commons/math3/stat/data/" + set + ".txt";
    try (InputStream in = CertifiedData.class.getResourceAsStream(name)) {
      return new BufferedReader(new InputStreamReader(in, StandardCharsets.US_ASCII))
          .lines()
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
