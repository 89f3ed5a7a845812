package witnessmark.fuzz;

import java.util.List;

/** What one parser's inputs came to. */
final class Tally {
  private final String name;
  private final Target.Allowance allowance;
  private long inputs;
  private long taken;
  private long bytes;
  private long slowest;
  private int slowestLength;
  private long most;
  private int mostLength;
  private double fullest;
  private int kinds;
  private List<Fault> faults = List.of();

  Tally(String name, Target.Allowance allowance) {
    this.name = name;
    this.allowance = allowance;
  }

  void add(byte[] input, long nanos, long allocated, String answer) {
    inputs++;
    bytes += input.length;
    taken += answer != null && answer.startsWith("taken") ? 1 : 0;
    if (nanos > slowest) {
      slowest = nanos;
      slowestLength = input.length;
    }
    if (allocated > most) {
      most = allocated;
      mostLength = input.length;
    }
    fullest = Math.max(fullest, (double) allocated / allowance.of(input));
  }

  void end(int kindsOfAnswers, List<Fault> found) {
    kinds = kindsOfAnswers;
    faults = found;
  }

  String name() {
    return name;
  }

  Target.Allowance allowance() {
    return allowance;
  }

  long inputs() {
    return inputs;
  }

  long taken() {
    return taken;
  }

  long bytes() {
    return bytes;
  }

  /** Processor time of the slowest input, in nanoseconds. */
  long slowest() {
    return slowest;
  }

  int slowestLength() {
    return slowestLength;
  }

  /** Bytes allocated for the input that took the most. */
  long most() {
    return most;
  }

  int mostLength() {
    return mostLength;
  }

  /** The largest part of its allowance that any input took. */
  double fullest() {
    return fullest;
  }

  int kinds() {
    return kinds;
  }

  List<Fault> faults() {
    return faults;
  }
}
