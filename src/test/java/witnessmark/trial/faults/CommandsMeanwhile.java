package witnessmark.trial.faults;

import java.nio.file.Path;

/** People's commands append to the log from processes of their own while the daemon records. */
final class CommandsMeanwhile implements Fault {
  @Override
  public String title() {
    return "commands append while the daemon records";
  }

  @Override
  public String promise() {
    return "both are on record, in one order, none refused for the other's sake";
  }

  @Override
  public Row run(Path directory, int scale) throws Exception {
    try (Rig rig = new Rig(directory)) {
      rig.shop.on(rig.broker);
      Gateway kept = rig.kept(rig.broker.url());
      rig.start();
      Thread sending = new Thread(() -> send(kept, 400 * scale));
      sending.start();
      int commands = 4 * scale;
      int failed = 0;
      for (int i = 0; i < commands; i++) {
        int status =
            rig.shop.attempt("operator", "enrol", "badge-2" + i, "--name", "bench " + i).status();
        failed += status == 0 ? 0 : 1;
      }
      sending.join();
      rig.promise("no command failed, not " + failed, failed == 0);
      long enrolled =
          rig.shop
              .ledger()
              .number(
                  "SELECT count(*) FROM trace WHERE kind = 'operator-enrolled' AND operator LIKE"
                      + " 'badge-2%';");
      rig.promise("every command is on record", enrolled == commands);
      rig.see("%d commands meanwhile, each with exit status 0 and one entry".formatted(commands));
      return rig.judged();
    }
  }

  private static void send(Gateway kept, int count) {
    try {
      kept.send(count);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
