package witnessmark.trial.faults;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;

/**
 * The network between the daemon and a broker: passes bytes, holds them, delays them, or breaks.
 */
final class Wire implements AutoCloseable {
  private final ServerSocket server;
  private final int to;
  private final Set<Socket> sockets = ConcurrentHashMap.newKeySet();
  private volatile long delayMillis;
  private volatile boolean stalled;
  private volatile boolean closed;

  Wire(int to) throws IOException {
    this.to = to;
    this.server = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    run(this::accept);
  }

  String url() {
    return "tcp://127.0.0.1:" + server.getLocalPort();
  }

  /** Holds every byte, and tells nobody. */
  void stall(boolean now) {
    stalled = now;
  }

  /** Every piece takes so long. */
  void delay(long millis) {
    delayMillis = millis;
  }

  /** Breaks all connections with a reset. */
  void reset() throws IOException {
    for (Socket socket : sockets) {
      if (!socket.isClosed()) {
        socket.setSoLinger(true, 0);
      }
      socket.close();
    }
    sockets.clear();
  }

  private void accept() throws IOException, InterruptedException {
    while (!closed) {
      Socket near = server.accept();
      while (stalled && !closed) {
        TimeUnit.MILLISECONDS.sleep(20);
      }
      Socket far = new Socket(InetAddress.getLoopbackAddress(), to);
      near.setTcpNoDelay(true);
      far.setTcpNoDelay(true);
      sockets.add(near);
      sockets.add(far);
      run(() -> pass(near, far));
      run(() -> pass(far, near));
    }
  }

  private void pass(Socket from, Socket into) throws IOException, InterruptedException {
    byte[] bytes = new byte[2048];
    try (from;
        into) {
      InputStream in = from.getInputStream();
      OutputStream out = into.getOutputStream();
      for (int n = in.read(bytes); n >= 0; n = in.read(bytes)) {
        TimeUnit.MILLISECONDS.sleep(delayMillis);
        while (stalled && !closed) {
          TimeUnit.MILLISECONDS.sleep(20);
        }
        out.write(bytes, 0, n);
      }
    }
  }

  private interface Work {
    void go() throws IOException, InterruptedException;
  }

  private static void run(Work work) {
    Thread thread =
        new Thread(
            () -> {
              try {
                work.go();
              } catch (IOException e) {
                // broken, as is wanted
              } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
              }
            });
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    closed = true;
    server.close();
    reset();
  }
}
