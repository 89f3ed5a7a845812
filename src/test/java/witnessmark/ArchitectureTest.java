package witnessmark;

import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static java.util.stream.Collectors.toSet;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Who may use whom: the direction of imports, and where each library lives. */
class ArchitectureTest {
  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(new ImportOption.DoNotIncludeTests())
          .importPackages("witnessmark", "wrenchsim");

  /** Each package of the bridge with the packages of the bridge it may import. */
  private static final Map<String, Set<String>> MAY_IMPORT =
      Map.ofEntries(
          // the nouns, and the reader of files
          row("torque", ""),
          row("toml", ""),
          row("log", "torque"),
          row("stats", ""),
          row("wrench", "torque procedure entry"),
          row("procedure", "torque toml"),
          row("sight", "torque procedure"),
          row("entry", "torque"),
          // the stages; only match and judge read the job, and none knows the next
          row("decode", "torque toml"),
          row("job", "torque procedure wrench entry"),
          row("match", "torque procedure wrench entry job"),
          row("judge", "torque procedure wrench entry job match"),
          // people's commands; assigning a reading is a match and a judgement by hand
          row("desk", "torque procedure wrench entry job match judge"),
          // what a scanned code commands
          row("scan", "torque procedure entry job desk"),
          // explaining a decision sets out what was weighed
          row("report", "torque procedure wrench entry job match record stats sample"),
          // studies on paper
          row("chart", "torque stats sample report"),
          // which readings are values of a process
          row("sample", "torque procedure entry stats"),
          // the record on paper, and that paper read without trust
          row("certificate", "torque procedure wrench entry job record recall report"),
          // a unit's record is the job's own fold over its entries
          row("record", "torque procedure wrench entry job ledger recall badge"),
          // the log; its verifier shares nothing with what it checks
          row("ledger", "torque"),
          row("ledger.verify", ""),
          row("ledger.sqlite", "ledger ledger.verify"),
          // a copy of the log, found whole before it counts
          row("backup", "ledger ledger.sqlite ledger.verify"),
          // what a wrench found wrong means for the joints on record
          row("recall", "torque procedure wrench entry ledger"),
          // the state of jobs says what is open
          row("nonconformity", "torque procedure entry job ledger pipeline"),
          // the wires
          row("link", "torque"),
          // who started the daemon and wants to know how it is
          row("systemd", ""),
          row("link.mqtt", "link torque"),
          row("link.serial", "link torque"),
          // the one place that knows the order of stages
          row(
              "pipeline",
              "torque procedure wrench entry job match judge desk scan decode ledger badge"),
          // a person's key pair
          row("badge", ""),
          // starts from a committed entry; pipeline for the fold of stored entries alone
          row("publish", "torque procedure wrench entry job ledger link pipeline"),
          // figures of the daemon at work, for those who watch it
          row("http", "torque entry ledger link pipeline publish"),
          row("config", "torque toml decode desk ledger link link.mqtt link.serial"),
          row(
              "daemon",
              "torque entry decode desk ledger ledger.sqlite link link.mqtt link.serial pipeline"
                  + " publish config http systemd"),
          // looks at everything that the daemon uses
          row(
              "doctor",
              "torque toml wrench entry job ledger ledger.sqlite ledger.verify link.mqtt"
                  + " link.serial pipeline config"),
          row(
              "demo",
              "torque procedure wrench entry job decode desk ledger ledger.sqlite ledger.verify"
                  + " pipeline report config daemon"),
          row(
              "cli.answer",
              "torque procedure sight wrench entry job desk ledger ledger.verify record report stats"
                  + " recall certificate sample doctor"),
          row(
              "cli",
              "torque toml procedure sight wrench entry job decode desk ledger ledger.sqlite"
                  + " ledger.verify pipeline record report stats recall"
                  + " nonconformity certificate config daemon demo"
                  + " chart sample badge backup log doctor systemd cli.answer"));

  /** Each library with the packages that may use it; a library in no row may not be used at all. */
  private static final Map<String, Set<String>> LIBRARIES =
      Map.ofEntries(
          row("org.tomlj", "witnessmark.toml"),
          row("org.apache.commons.math3", "witnessmark.stats"),
          row("org.jfree", "witnessmark.chart"),
          row("org.apache.batik", "witnessmark.chart"),
          row("org.w3c.dom", "witnessmark.chart"),
          row("javax.xml", "witnessmark.chart"),
          row("org.apache.pdfbox", "witnessmark.certificate witnessmark.chart"),
          row("org.apache.fontbox", "witnessmark.certificate"),
          row("com.google.zxing", "witnessmark.certificate"),
          row("de.rototor.pdfbox", "witnessmark.chart"),
          row("com.google.re2j", "witnessmark.procedure witnessmark.decode"),
          row("javax.crypto", "witnessmark.badge"),
          row("java.sql", "witnessmark.ledger.sqlite"),
          row("org.sqlite", "witnessmark.ledger.sqlite"),
          row("org.eclipse.paho", "witnessmark.link.mqtt wrenchsim.mqtt"),
          row("com.fazecast", "witnessmark.link.serial wrenchsim.line"),
          row("io.prometheus", "witnessmark.http"),
          row("com.sun.net.httpserver", "witnessmark.http"),
          row("ch.qos.logback", "witnessmark.log"),
          row("picocli", "witnessmark.cli wrenchsim"),
          row("com.sun.jna", "witnessmark.systemd"),
          row("io.moquette", "witnessmark.demo"),
          row(
              "com.fasterxml.jackson",
              "witnessmark.entry witnessmark.decode witnessmark.ledger witnessmark.ledger.verify"
                  + " witnessmark.publish witnessmark.report witnessmark.certificate"
                  + " witnessmark.daemon witnessmark.cli.answer witnessmark.log witnessmark.doctor wrenchsim.wire"));

  /** Packages whose classes decide or describe, whatever the time, the disk and the weather. */
  private static final Set<String> PURE =
      Stream.of(
              "torque",
              "toml",
              "stats",
              "procedure",
              "sight",
              "wrench",
              "entry",
              "job",
              "match",
              "judge",
              "desk",
              "scan",
              "decode",
              "record",
              "report",
              "sample")
          .map("witnessmark."::concat)
          .collect(toSet());

  /**
   * What carries the pipeline over threads and tells what happens to it; the rest of it is pure.
   */
  private static final Set<String> EDGES_OF_PIPELINE =
      Set.of(
          "witnessmark.pipeline.Loop",
          "witnessmark.pipeline.Counts",
          "witnessmark.pipeline.Waiting",
          "witnessmark.pipeline.Recorder");

  /** Types, and packages where they end in a point. */
  private static final List<String> IMPURE_TYPES =
      List.of(
          "java.nio.file.",
          "java.nio.channels.",
          "java.net.",
          "java.io.File",
          "java.io.FileInputStream",
          "java.io.FileOutputStream",
          "java.io.FileReader",
          "java.io.FileWriter",
          "java.io.RandomAccessFile",
          "java.io.PrintStream",
          "java.sql.",
          "java.util.concurrent.",
          "java.util.Random",
          "java.util.Timer",
          "java.util.UUID",
          "java.util.random.",
          "java.security.SecureRandom",
          "java.lang.Thread",
          "java.lang.Process",
          "java.lang.ProcessBuilder",
          "java.lang.Runtime",
          "org.slf4j.",
          "ch.qos.");

  /** The only clock of the core: {@code Moments.now}, for the edges that stamp what comes in. */
  private static final String CLOCK = "witnessmark.entry.Moments";

  private static Map.Entry<String, Set<String>> row(String name, String may) {
    return Map.entry(name, may.isEmpty() ? Set.of() : Set.of(may.split(" ")));
  }

  private static Stream<JavaClass> bridge() {
    return ALL.stream().filter(c -> c.getPackageName().startsWith("witnessmark"));
  }

  private static Stream<Dependency> dependencies(Stream<JavaClass> classes) {
    return classes.flatMap(c -> c.getDirectDependenciesFromSelf().stream());
  }

  private static String target(Dependency dependency) {
    return dependency.getTargetClass().getBaseComponentType().getName();
  }

  private static String packageOf(Dependency dependency) {
    return dependency.getTargetClass().getBaseComponentType().getPackageName();
  }

  private static boolean within(String name, String prefix) {
    return name.startsWith(prefix + ".");
  }

  @Test
  void everyPackageStandsInTheTable() {
    assertThat(bridge().map(c -> shortName(c.getPackageName())).collect(toSet()))
        .isEqualTo(MAY_IMPORT.keySet());
  }

  @Test
  void importsGoOneWayOnly() {
    Set<String> wrong = new TreeSet<>();
    dependencies(bridge())
        .filter(d -> within(packageOf(d), "witnessmark"))
        .forEach(
            d -> {
              String from = shortName(d.getOriginClass().getPackageName());
              String to = shortName(packageOf(d));
              if (!from.equals(to) && !MAY_IMPORT.get(from).contains(to)) {
                wrong.add(from + " may not import " + to + ": " + d.getDescription());
              }
            });
    assertThat(wrong).isEmpty();
  }

  private static String shortName(String packageName) {
    return packageName.substring("witnessmark.".length());
  }

  @Test
  void noPackagesGoInCircles() {
    slices().matching("witnessmark.(**)").should().beFreeOfCycles().check(ALL);
    slices().matching("wrenchsim.(**)").should().beFreeOfCycles().check(ALL);
  }

  @Test
  void theSimulatorAndTheBridgeKnowNothingOfEachOther() {
    Set<String> wrong = new TreeSet<>();
    dependencies(ALL.stream())
        .filter(d -> ours(d.getOriginClass().getPackageName()).length() > 0)
        .filter(d -> ours(packageOf(d)).length() > 0)
        .filter(d -> !ours(d.getOriginClass().getPackageName()).equals(ours(packageOf(d))))
        .forEach(d -> wrong.add(d.getDescription()));
    assertThat(wrong).isEmpty();
    assertThat(ALL.stream().map(c -> ours(c.getPackageName())).collect(toSet()))
        .containsExactlyInAnyOrder("witnessmark", "wrenchsim");
  }

  private static String ours(String name) {
    return Stream.of("witnessmark", "wrenchsim")
        .filter(o -> name.equals(o) || within(name, o))
        .findFirst()
        .orElse("");
  }

  @Test
  void everyLibraryLivesWhereTheTableSays() {
    Map<String, Set<String>> wrong = new TreeMap<>();
    dependencies(ALL.stream())
        .filter(d -> ours(packageOf(d)).isEmpty() && target(d).contains("."))
        .filter(d -> !plainJdk(target(d)) && !logging(d))
        .forEach(
            d -> {
              String from = d.getOriginClass().getPackageName();
              boolean allowed =
                  LIBRARIES.entrySet().stream()
                      .anyMatch(l -> within(target(d), l.getKey()) && l.getValue().contains(from));
              if (!allowed) {
                wrong.computeIfAbsent(from, k -> new TreeSet<>()).add(target(d));
              }
            });
    assertThat(wrong).isEmpty();
  }

  /** Logging is everywhere at the edges; the core is held to none by its own test. */
  private static boolean logging(Dependency dependency) {
    return within(target(dependency), "org.slf4j");
  }

  private static boolean plainJdk(String name) {
    return (name.startsWith("java.")
            || name.startsWith("javax.net.")
            || name.startsWith("javax.security."))
        && !within(name, "java.sql");
  }

  @Test
  void theCoreHasNoClockAndTouchesNothing() {
    Set<String> wrong = new TreeSet<>();
    core()
        .forEach(
            c -> {
              c.getDirectDependenciesFromSelf().stream()
                  .filter(d -> impure(target(d)))
                  .forEach(d -> wrong.add(d.getDescription()));
              c.getMethodCallsFromSelf().stream()
                  .filter(call -> impure(call.getTargetOwner().getName(), call.getName()))
                  .forEach(call -> wrong.add(call.getDescription()));
            });
    assertThat(wrong).isEmpty();
  }

  private static Stream<JavaClass> core() {
    return bridge()
        .filter(
            c ->
                PURE.contains(c.getPackageName())
                    || (c.getPackageName().equals("witnessmark.pipeline")
                        && EDGES_OF_PIPELINE.stream().noneMatch(e -> c.getName().startsWith(e))))
        .filter(c -> !c.getName().equals(CLOCK));
  }

  private static boolean impure(String type) {
    return IMPURE_TYPES.stream()
        .anyMatch(t -> t.endsWith(".") ? type.startsWith(t) : type.equals(t));
  }

  private static boolean impure(String owner, String method) {
    boolean clock =
        owner.startsWith("java.time.") && (method.equals("now") || owner.endsWith("Clock"));
    boolean system =
        owner.equals("java.lang.System")
            && Set.of("currentTimeMillis", "nanoTime", "getenv", "getProperty").contains(method);
    boolean chance = owner.equals("java.lang.Math") && method.equals("random");
    boolean zone = owner.equals("java.time.ZoneId") && method.equals("systemDefault");
    return clock || system || chance || zone || (owner.equals(CLOCK) && method.equals("now"));
  }

  @Test
  void theRuleForTheCoreWouldSeeWhatTheEdgesDo() {
    assertThat(impure("java.time.Instant", "now")).isTrue();
    assertThat(
            bridge()
                .filter(c -> c.getName().equals("witnessmark.pipeline.Loop"))
                .flatMap(c -> c.getDirectDependenciesFromSelf().stream())
                .anyMatch(d -> impure(target(d))))
        .isTrue();
    assertThat(
            bridge()
                .filter(c -> c.getName().equals(CLOCK))
                .flatMap(c -> c.getMethodCallsFromSelf().stream())
                .anyMatch(call -> impure(call.getTargetOwner().getName(), call.getName())))
        .isTrue();
  }
}
