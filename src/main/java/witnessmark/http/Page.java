package witnessmark.http;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Serves {@code /health} and {@code /metrics}, and nothing else.
 *
 * <p>Recording never waits for it: where its address is taken, it tries again by itself, and health
 * says so.
 */
public final class Page implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Page.class);

  /** Calls at a time, each with its thread: a caller that is slow keeps nobody waiting. */
  private static final int CALLS = 64;

  private static final long AGAIN_MILLIS = 5_000;
  private static final String JSON = "application/json";
  private static final String PLAIN = "text/plain; charset=utf-8";

  static {
    // Read once by the JDK's server, which by itself waits for a caller without end.
    limit("sun.net.httpserver.maxReqTime", "3");
    limit("sun.net.httpserver.maxRspTime", "10");
    limit("sun.net.httpserver.maxIdleConnections", "8");
    limit("jdk.httpserver.maxConnections", Integer.toString(CALLS));
  }

  private final InetSocketAddress address;
  private final Observed bridge;
  private final Figures figures;
  private final ThreadPoolExecutor threads =
      new ThreadPoolExecutor(
          CALLS, CALLS, 10, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), Page::thread);
  private final Thread opener = new Thread(this::open, "http");
  private volatile Optional<String> trouble = Optional.empty();
  private volatile boolean closed;
  private HttpServer server;

  /**
   * @param host an address as numbers
   */
  public Page(String host, int port, Observed bridge, Recorded recorded) {
    this.address = new InetSocketAddress(host, port);
    this.bridge = bridge;
    this.figures = new Figures(bridge, recorded);
    this.opener.setDaemon(true);
    this.threads.allowCoreThreadTimeOut(true);
  }

  private static void limit(String property, String value) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, value);
    }
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "http");
    thread.setDaemon(true);
    return thread;
  }

  /** Begins to serve, and returns at once. */
  public void start() {
    opener.start();
  }

  /** Why nothing is served, if so. */
  public Optional<String> trouble() {
    return trouble;
  }

  private void open() {
    while (!closed && !opened()) {
      try {
        TimeUnit.MILLISECONDS.sleep(AGAIN_MILLIS);
      } catch (InterruptedException e) {
        return;
      }
    }
  }

  private synchronized boolean opened() {
    if (closed) {
      return true;
    }
    try {
      server = HttpServer.create(address, 0);
      server.setExecutor(threads);
      server.createContext("/", this::answer);
      server.start();
      trouble = Optional.empty();
      LOG.atInfo().addKeyValue("at", shown()).log("serving health and metrics");
      return true;
    } catch (IOException e) {
      String why =
          "http: "
              + shown()
              + " cannot be listened on ("
              + e.getMessage()
              + "); end what uses it, or change listen under [http]";
      if (trouble.isEmpty()) {
        LOG.atWarn().addKeyValue("detail", why).log("no health and metrics over HTTP");
      }
      trouble = Optional.of(why);
      return false;
    }
  }

  private String shown() {
    String host = address.getAddress().getHostAddress();
    return (host.contains(":") ? "[" + host + "]" : host) + ":" + address.getPort();
  }

  private void answer(HttpExchange call) throws IOException {
    try (call) {
      String path = call.getRequestURI().getPath();
      if (!"/health".equals(path) && !"/metrics".equals(path)) {
        send(call, 404, PLAIN, text("There is /health and /metrics.\n"));
      } else if (!call.getRequestMethod().equals("GET")) {
        call.getResponseHeaders().set("Allow", "GET");
        send(call, 405, PLAIN, text("Only GET is answered.\n"));
      } else if (path.equals("/health")) {
        boolean recording = bridge.counts().trouble() == null;
        send(call, recording ? 200 : 503, JSON, bridge.health().get().message());
      } else {
        send(call, 200, Figures.TYPE, figures.text());
      }
    } catch (RuntimeException e) {
      LOG.atWarn().log("a call over HTTP failed", e);
    }
  }

  private static byte[] text(String line) {
    return line.getBytes(StandardCharsets.UTF_8);
  }

  private static void send(HttpExchange call, int status, String type, byte[] body)
      throws IOException {
    call.getResponseHeaders().set("Content-Type", type);
    call.getResponseHeaders().set("Cache-Control", "no-store");
    boolean bare = call.getRequestMethod().equals("HEAD");
    call.sendResponseHeaders(status, bare ? -1 : body.length);
    if (!bare) {
      call.getResponseBody().write(body);
    }
  }

  /** Stops serving at once. */
  @Override
  public synchronized void close() {
    closed = true;
    opener.interrupt();
    if (server != null) {
      server.stop(0);
    }
    threads.shutdownNow();
  }
}
