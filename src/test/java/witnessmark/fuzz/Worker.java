package witnessmark.fuzz;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;

/** Gives one parser its inputs. */
final class Worker<A> {
  static final long LIMIT_NANOS = 100_000_000;
  private static final int FAULTS = 20;

  private final Target<A> target;
  private final long inputs;
  private final Watchdog watchdog;
  private final Random random;
  private final Corpus corpus;
  private final Mutator mutator;
  private final Tally tally;
  private final Map<String, Fault> faults = new LinkedHashMap<>();

  Worker(Target<A> target, long inputs, long seed, Watchdog watchdog) {
    this.target = target;
    this.inputs = inputs;
    this.watchdog = watchdog;
    this.random = new Random(seed ^ (long) target.name().hashCode() << 32);
    this.corpus = new Corpus(target.samples(), random);
    this.mutator = new Mutator(random, target.words(), target.longest());
    this.tally = new Tally(target.name(), target.allowance());
  }

  Tally run() {
    long began = Meter.processor();
    // the first readings load classes, which is no input's doing
    for (byte[] sample : target.samples()) {
      for (int i = 0; i < 50; i++) {
        Meter.once(target, sample);
      }
      one(sample);
    }
    for (long i = target.samples().size(); i < inputs; i++) {
      byte[] kept = corpus.any();
      byte[] made = target.own(kept, random);
      boolean asMade = random.nextInt(made == kept ? 64 : 2) == 0;
      one(asMade ? made : mutator.of(made, corpus.any()));
    }
    tally.end(corpus.kinds(), faults.values().stream().map(f -> Shrink.of(target, f)).toList());
    long seconds = (Meter.processor() - began) / 1_000_000_000;
    System.out.println(target.name() + ": " + tally.inputs() + " inputs, " + seconds + " s");
    return tally;
  }

  private void one(byte[] input) {
    watchdog.begins(target.name(), input);
    Meter.Measured<A> measured = Meter.once(target, input);
    boolean suspect = Fault.slow(measured) || Fault.large(target, input, measured);
    if (suspect || measured.nanos() > tally.slowest() || measured.allocated() > tally.most()) {
      measured = Meter.least(target, input);
    }
    String answer = null;
    if (measured.thrown() == null) {
      try {
        answer = target.judge(input, measured.answer());
        corpus.told(input, answer);
      } catch (RuntimeException | AssertionError e) {
        answer = null;
      }
    }
    if (answer == null || Fault.slow(measured) || Fault.large(target, input, measured)) {
      found(input);
    }
    tally.add(input, measured.nanos(), measured.allocated(), answer);
    watchdog.ends();
  }

  private void found(byte[] input) {
    Fault fault = Fault.of(target, input);
    if (fault != null && faults.size() < FAULTS) {
      faults.merge(fault.what(), fault, (a, b) -> a.input().length <= b.input().length ? a : b);
    }
  }
}
