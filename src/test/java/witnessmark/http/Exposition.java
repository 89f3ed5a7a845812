package witnessmark.http;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A strict reader of the text format 0.0.4 (prometheus.io, "Exposition formats": escapes and groups
 * read in a copy of that page, the rest from memory), independent of the library that writes it.
 */
final class Exposition {
  private static final String NAME = "[a-zA-Z_:][a-zA-Z0-9_:]*";
  private static final Pattern HELP =
      Pattern.compile("# HELP (" + NAME + ") (?:[^\\\\]|\\\\[\\\\n])*");
  private static final Pattern TYPE =
      Pattern.compile("# TYPE (" + NAME + ") (counter|gauge|histogram|summary|untyped)");
  private static final Pattern SAMPLE =
      Pattern.compile("(" + NAME + ")(?:\\{([^}]*)\\})? ([^ ]+)(?: -?[0-9]+)?");
  private static final Pattern LABEL =
      Pattern.compile("([a-zA-Z_][a-zA-Z0-9_]*)=\"((?:[^\"\\\\]|\\\\[\\\\\"n])*)\",?");

  private final Map<String, Double> samples = new HashMap<>();
  private final Map<String, String> types = new HashMap<>();
  private final Set<String> ended = new HashSet<>();
  private String family = "";

  private Exposition() {}

  /**
   * Reads a whole page.
   *
   * @throws AssertionError where it is not of the format
   */
  static Exposition read(String page) {
    Exposition all = new Exposition();
    must(page.endsWith("\n"), "the last line ends with a line feed");
    for (String line : page.substring(0, page.length() - 1).split("\n", -1)) {
      all.line(line);
    }
    all.histograms();
    return all;
  }

  private void line(String line) {
    Matcher help = HELP.matcher(line);
    Matcher type = TYPE.matcher(line);
    Matcher sample = SAMPLE.matcher(line);
    if (type.matches()) {
      begin(type.group(1));
      must(types.put(type.group(1), type.group(2)) == null, "one TYPE a name: " + line);
    } else if (help.matches()) {
      begin(help.group(1));
    } else {
      must(sample.matches(), "a sample: " + line);
      sample(sample.group(1), sample.group(2), sample.group(3));
    }
  }

  /** All lines of a family stand together. */
  private void begin(String name) {
    if (!name.equals(family)) {
      must(ended.add(name), "the lines of " + name + " stand together");
      family = name;
    }
  }

  private void sample(String name, String labels, String value) {
    String base =
        switch (types.getOrDefault(family, "")) {
          case "histogram" -> name.replaceFirst("_(bucket|sum|count)$", "");
          case "summary" -> name.replaceFirst("_(sum|count)$", "");
          default -> name;
        };
    must(base.equals(family), name + " stands under its TYPE");
    Map<String, String> read = labels(labels == null ? "" : labels);
    String key = name + (read.isEmpty() ? "" : new java.util.TreeMap<>(read).toString());
    must(samples.put(key, number(value)) == null, "each series once: " + key);
  }

  private static Map<String, String> labels(String text) {
    Map<String, String> labels = new HashMap<>();
    Matcher label = LABEL.matcher(text);
    int at = 0;
    while (at < text.length()) {
      must(label.find(at) && label.start() == at, "labels: " + text);
      must(labels.put(label.group(1), label.group(2)) == null, "each label once: " + text);
      at = label.end();
    }
    return labels;
  }

  private static double number(String value) {
    return switch (value) {
      case "+Inf" -> Double.POSITIVE_INFINITY;
      case "-Inf" -> Double.NEGATIVE_INFINITY;
      case "NaN" -> Double.NaN;
      default -> Double.parseDouble(value);
    };
  }

  private void histograms() {
    types.forEach(
        (name, type) -> {
          if (type.equals("histogram")) {
            List<Double> counts = new ArrayList<>();
            samples.entrySet().stream()
                .filter(s -> s.getKey().startsWith(name + "_bucket{"))
                .sorted(java.util.Comparator.comparingDouble(s -> bound(s.getKey())))
                .forEach(s -> counts.add(s.getValue()));
            must(
                counts.equals(counts.stream().sorted().toList()), "buckets of " + name + " add up");
            must(
                samples.get(name + "_bucket{le=+Inf}").equals(samples.get(name + "_count")),
                "the last bucket of " + name + " holds all");
          }
        });
  }

  private static double bound(String key) {
    return number(key.replaceFirst(".*le=([^,}]*).*", "$1"));
  }

  /** The value of a series, named like {@code name{label=value}}. */
  double value(String series) {
    must(samples.containsKey(series), series + " is there, among " + samples.keySet());
    return samples.get(series);
  }

  Map<String, String> types() {
    return types;
  }

  private static void must(boolean holds, String what) {
    if (!holds) {
      throw new AssertionError("expected: " + what);
    }
  }
}
