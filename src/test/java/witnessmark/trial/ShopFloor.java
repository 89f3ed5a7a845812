package witnessmark.trial;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import wrenchsim.shop.Chance;
import wrenchsim.wire.MalformedMessage;

/** The shop-floor trial: what really happened, by what the bridge recorded. */
public final class ShopFloor {
  /** Jobs on one bench before a new one with new wrenches begins. */
  private static final int RUN = 50;

  private ShopFloor() {}

  /**
   * Runs the trial and prints its tables.
   *
   * @param args jobs, seed, and optionally the file to write the tables to
   */
  public static void main(String[] args) throws IOException, MalformedMessage {
    int jobs = Integer.parseInt(args[0]);
    long seed = Long.parseLong(args[1]);
    Map<Scene, Tally> all = run(jobs, seed);
    List<String> page = Page.of(all, jobs, seed);
    page.forEach(System.out::println);
    all.values()
        .forEach(t -> t.examples().forEach((what, n) -> System.err.println(n + " " + what)));
    if (args.length > 2 && !args[2].isEmpty()) {
      Files.write(Path.of(args[2]), page);
    }
    if (!Goals.missed(all).isEmpty()) {
      System.exit(1);
    }
  }

  static Map<Scene, Tally> run(int jobs, long seed) throws MalformedMessage {
    Map<Scene, Tally> all = new LinkedHashMap<>();
    for (Scene scene : Scenes.all()) {
      int left = Math.max(1, jobs * scene.jobs() / 100);
      Tally tally = new Tally();
      List<Integer> runs = new ArrayList<>();
      for (; left > 0; left -= RUN) {
        runs.add(Math.min(RUN, left));
      }
      for (int i = 0; i < runs.size(); i++) {
        long own = Chance.of(seed, scene.title() + " " + i).nextLong();
        tally.add(new Floor(scene, own).work(runs.get(i)));
      }
      all.put(scene, tally);
    }
    return all;
  }
}
