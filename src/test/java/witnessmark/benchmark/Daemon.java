package witnessmark.benchmark;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import witnessmark.config.BridgeConfig;
import witnessmark.config.ConfigFile;
import witnessmark.daemon.Bridge;
import witnessmark.ledger.LedgerFiles;

/** The real daemon, built from a configuration file, in this process. */
final class Daemon implements Subject {
  /** What the daemon calls itself at the broker when the file names no client-id. */
  static final String CLIENT = "witnessmark-shop-1-main";

  /** The topic it answers on. */
  static final String ANSWERS = "witnessmark/v1/" + Work.STATION + "/verdict";

  private final Bridge bridge;

  Daemon(Path directory, String url, int fasteners) {
    LedgerFiles files = Data.withJob(directory.resolve("data"), fasteners);
    try {
      BridgeConfig config = ConfigFile.read(Data.config(directory, "shop-1", url), Map.of());
      bridge = new Bridge(config, files);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public String answers() {
    return ANSWERS;
  }

  @Override
  public void start() {
    bridge.start();
  }

  @Override
  public long durable() {
    return bridge.counts().events();
  }

  @Override
  public void close() {
    bridge.close();
  }
}
