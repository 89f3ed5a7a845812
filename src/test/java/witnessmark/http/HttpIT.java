package witnessmark.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import witnessmark.bench.DaemonProcess;
import witnessmark.bench.FreePort;
import witnessmark.bench.Json;
import witnessmark.bench.Mosquitto;
import witnessmark.bench.Program;
import witnessmark.bench.Workshop;

/** Health and figures of a bridge at work. */
class HttpIT {
  private static final Duration LONG = Duration.ofSeconds(40);

  @TempDir Path directory;
  private final HttpClient client = HttpClient.newHttpClient();
  private final int port = FreePort.next();
  private Mosquitto broker;
  private Workshop shop;

  @BeforeEach
  void begin() {
    broker = Mosquitto.start(directory, "autosave_interval 3600", "autosave_on_changes false");
    shop = Workshop.furnished(directory).on(broker).http(port);
  }

  @AfterEach
  void end() {
    broker.close();
  }

  private HttpResponse<String> call(String method, String path) {
    try {
      return client.send(
          HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path))
              .method(method, HttpRequest.BodyPublishers.noBody())
              .timeout(LONG)
              .build(),
          BodyHandlers.ofString());
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  private Exposition figures() {
    HttpResponse<String> page = call("GET", "/metrics");
    assertThat(page.statusCode()).isEqualTo(200);
    assertThat(page.headers().firstValue("Content-Type"))
        .contains("text/plain; version=0.0.4; charset=utf-8");
    return Exposition.read(page.body());
  }

  private static List<String> readings(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(
            n -> "{\"wrench\":\"TW-0417\",\"event\":" + n + ",\"torque\":\"33\",\"unit\":\"N.m\"}")
        .toList();
  }

  @Test
  void everyScrapeUnderLoadIsOfTheFormatAndInTheEndTheFiguresAddUp() {
    int events = 1500;
    try (DaemonProcess daemon = shop.daemon(broker)) {
      shop.open("RAM-210", "ATR-26-0147", "bench-1");
      AtomicBoolean done = new AtomicBoolean();
      List<CompletableFuture<Integer>> scrapers = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        scrapers.add(CompletableFuture.supplyAsync(() -> scrape(done)));
      }
      broker.publish("witnessmark/v1/bench-1/torque", readings(1, events + 1));
      broker.publish("witnessmark/v1/bench-1/torque", readings(1, 11));
      broker.publish("witnessmark/v1/bench-1/torque", List.of("no JSON", "[]"));
      await()
          .atMost(LONG)
          .until(() -> figures().value("witnessmark_messages_refused_total{reason=burst}") == 1);
      await()
          .atMost(LONG)
          .until(() -> figures().value("witnessmark_publish_lag_entries{link=broker}") == 0);
      done.set(true);
      assertThat(scrapers).allSatisfy(s -> assertThat(s.join()).isGreaterThan(2));
      Exposition last = figures();
      assertThat(last.value("witnessmark_readings_total{verdict=none}")).isEqualTo(events);
      assertThat(last.value("witnessmark_readings_repeated_total")).isEqualTo(10);
      assertThat(last.value("witnessmark_messages_refused_total{reason=payload}")).isEqualTo(1);
      assertThat(last.value("witnessmark_entries_recorded_total")).isEqualTo(events + 2);
      // five of the workshop, the job, and what arrived
      assertThat(last.value("witnessmark_ledger_entries")).isEqualTo(5 + 1 + events + 2);
      assertThat(last.value("witnessmark_jobs_open")).isEqualTo(1);
      assertThat(last.value("witnessmark_recording")).isEqualTo(1);
      assertThat(last.value("witnessmark_degraded")).isZero();
      assertThat(last.value("witnessmark_queue_messages")).isZero();
      assertThat(last.value("witnessmark_queue_fill_ratio{kept_by=sender}")).isZero();
      assertThat(last.value("witnessmark_messages_not_kept_total")).isZero();
      assertThat(last.value("witnessmark_link_state{link=broker, state=up}")).isEqualTo(1);
      assertThat(last.value("witnessmark_link_state{link=broker, state=waiting}")).isZero();
      assertThat(last.value("witnessmark_commit_duration_seconds_count"))
          .isBetween(events / 256.0, events + 12.0);
      assertThat(last.value("witnessmark_ledger_file_bytes{file=ledger.db}")).isPositive();
      assertThat(last.value("witnessmark_disk_free_bytes")).isPositive();
      assertThat(last.value("witnessmark_build_info{version=0.1.0}")).isEqualTo(1);
      assertThat(last.value("process_start_time_seconds")).isPositive();
      assertThat(daemon.ended()).isFalse();
    }
  }

  private int scrape(AtomicBoolean done) {
    int pages = 0;
    double before = 0;
    while (!done.get()) {
      double now = figures().value("witnessmark_entries_recorded_total");
      assertThat(now).isGreaterThanOrEqualTo(before);
      before = now;
      pages++;
    }
    return pages;
  }

  @Test
  void nothingElseIsServedAndNothingElseIsDone() throws IOException {
    try (DaemonProcess daemon = shop.daemon(broker)) {
      assertThat(Json.of(call("GET", "/health").body()).path("state").asText()).isEqualTo("ok");
      assertThat(call("GET", "/health?x=1").statusCode()).isEqualTo(200);
      for (String path : List.of("/", "/health/", "/metrics/../shop.toml", "/%2e%2e/shop.toml")) {
        assertThat(call("GET", path).statusCode()).as(path).isEqualTo(404);
      }
      for (String method : List.of("POST", "PUT", "DELETE", "HEAD", "OPTIONS", "PATCH")) {
        HttpResponse<String> refused = call(method, "/metrics");
        assertThat(refused.statusCode()).as(method).isEqualTo(405);
        assertThat(refused.headers().firstValue("Allow")).contains("GET");
      }
      assertThat(raw("GET ../../etc/passwd HTTP/1.1\r\nHost: x\r\n\r\n")).doesNotContain("root:");
      assertThat(daemon.ended()).isFalse();
    }
  }

  private String raw(String request) throws IOException {
    try (Socket socket = new Socket("127.0.0.1", port)) {
      socket.setSoTimeout(10_000);
      socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
      socket.shutdownOutput();
      try (InputStream in = socket.getInputStream()) {
        return new String(in.readNBytes(4096), StandardCharsets.US_ASCII);
      }
    }
  }

  @Test
  void callersThatNeverFinishKeepNobodyWaiting() throws IOException {
    try (DaemonProcess daemon = shop.daemon(broker)) {
      List<Socket> slow = new ArrayList<>();
      for (int i = 0; i < 20; i++) {
        Socket socket = new Socket("127.0.0.1", port);
        socket.getOutputStream().write("GET /metr".getBytes(StandardCharsets.US_ASCII));
        slow.add(socket);
      }
      long from = System.nanoTime();
      assertThat(call("GET", "/health").statusCode()).isEqualTo(200);
      assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(Duration.ofSeconds(2));
      slow.get(0).setSoTimeout(20_000);
      assertThat(slow.get(0).getInputStream().read()).as("is sent away").isEqualTo(-1);
      for (Socket socket : slow) {
        socket.close();
      }
      assertThat(daemon.ended()).isFalse();
    }
  }

  @Test
  void healthIsUnavailableWhileNothingCanBeRecorded() throws Exception {
    Path database = directory.resolve("witnessmark-data/ledger.db");
    try (DaemonProcess daemon = shop.daemon(broker)) {
      try (Connection other = DriverManager.getConnection("jdbc:sqlite:" + database);
          Statement statement = other.createStatement()) {
        statement.execute("BEGIN IMMEDIATE");
        broker.publish("witnessmark/v1/bench-1/torque", readings(1, 2));
        await().atMost(LONG).until(() -> call("GET", "/health").statusCode() == 503);
        assertThat(Json.of(call("GET", "/health").body()).path("reason").asText())
            .startsWith("Nothing can be recorded: ");
        assertThat(figures().value("witnessmark_recording")).isZero();
        statement.execute("ROLLBACK");
      }
      await().atMost(LONG).until(() -> call("GET", "/health").statusCode() == 200);
      assertThat(figures().value("witnessmark_recording")).isEqualTo(1);
      assertThat(daemon.ended()).isFalse();
    }
  }

  @Test
  void aLinkThatIsDownIsDegradedAndStillOk() {
    try (DaemonProcess daemon = shop.daemon(broker)) {
      broker.kill();
      await().atMost(LONG).until(() -> call("GET", "/health").body().contains("degraded"));
      assertThat(call("GET", "/health").statusCode()).isEqualTo(200);
      assertThat(figures().value("witnessmark_link_state{link=broker, state=up}")).isZero();
      assertThat(daemon.ended()).isFalse();
    }
  }

  @Test
  void anAddressThatIsTakenDoesNotKeepTheBridgeFromRecording() throws IOException {
    ServerSocket taken = new ServerSocket(port, 1, InetAddress.getByName("127.0.0.1"));
    try (DaemonProcess daemon = shop.daemon().awaitUp("broker")) {
      String health = "witnessmark/v1/shop-1/health";
      await()
          .atMost(LONG)
          .until(
              () ->
                  broker.take(health, 1, Duration.ofSeconds(2)).stream()
                      .anyMatch(
                          h -> h.contains("http: 127.0.0.1:" + port + " cannot be listened")));
      taken.close();
      await().atMost(LONG).until(() -> daemon.log().contains("serving health and metrics"));
      assertThat(call("GET", "/health").body()).contains("\"state\":\"ok\"");
    }
  }

  @Test
  void withoutItNoClassOfItIsLoaded() throws Exception {
    Workshop plain = Workshop.furnished(Files.createDirectory(directory.resolve("plain")));
    assertThat(loaded(plain.on(broker))).noneMatch(HttpIT::figuring);
    assertThat(loaded(plain.http(port))).anyMatch(HttpIT::figuring);
  }

  private static boolean figuring(String loaded) {
    return loaded.contains(" io.prometheus.")
        || loaded.contains(" com.sun.net.httpserver.")
        || loaded.contains(" witnessmark.http.");
  }

  private static List<String> loaded(Workshop shop) throws Exception {
    Path classes = Files.createTempFile(shop.directory(), "classes", ".log");
    Process daemon =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xlog:class+load:file=" + classes + ":none:filecount=0",
                "-jar",
                Program.jar().toString(),
                "run",
                "--config",
                shop.config().toString())
            .directory(shop.directory().toFile())
            .redirectErrorStream(true)
            .start();
    try {
      String said = "";
      while (!said.contains("to=\"UP\"")) {
        said += new String(daemon.getInputStream().readNBytes(1), StandardCharsets.UTF_8);
        assertThat(daemon.isAlive()).as(said).isTrue();
      }
    } finally {
      daemon.destroy();
      daemon.waitFor();
    }
    return Files.readAllLines(classes);
  }
}
