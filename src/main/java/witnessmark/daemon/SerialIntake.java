package witnessmark.daemon;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import java.util.function.Predicate;
import witnessmark.config.SerialConfig;
import witnessmark.decode.Broken;
import witnessmark.decode.Decoded;
import witnessmark.decode.Frame;
import witnessmark.decode.Framer;
import witnessmark.decode.Malformed;
import witnessmark.decode.ProfileDecoder;
import witnessmark.decode.Replies;
import witnessmark.decode.Sample;
import witnessmark.decode.Whole;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.entry.Meaning;
import witnessmark.entry.Moments;
import witnessmark.link.serial.ChunkSink;
import witnessmark.pipeline.Loop;
import witnessmark.pipeline.Message;
import witnessmark.pipeline.Outcome;
import witnessmark.pipeline.Sender;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** Brings a serial line's frames to the writer, and the answers back once they are on record. */
final class SerialIntake implements ChunkSink {
  /** A line may wait for a slow disk as long as it takes. */
  private static final Duration FOREVER = Duration.ofDays(365);

  private final Loop loop;
  private final SerialConfig config;
  private final Framer framer;
  private final ProfileDecoder decoder;
  private final Predicate<byte[]> send;

  /** Whether the newest answer may have made the device send again what is kept here. */
  private volatile boolean refusing;

  /**
   * @param send writes an answer to the port; false when it did not go out
   */
  SerialIntake(Loop loop, SerialConfig config, Predicate<byte[]> send) {
    this.loop = loop;
    this.config = config;
    this.framer = new Framer(config.profile().frame().orElseThrow());
    this.decoder = new ProfileDecoder(config.profile());
    this.send = send;
  }

  @Override
  public void chunk(byte[] bytes, int length, Instant at) {
    framer.feed(bytes, length).forEach(frame -> pass(frame, at));
  }

  @Override
  public void lineClosed() {
    framer.end().forEach(frame -> pass(frame, Moments.now()));
  }

  private void pass(Frame frame, Instant at) {
    Device device = new Device();
    loop.offer(
        new Message(
            Optional.of(config.station()),
            "serial:" + config.settings().name(),
            at,
            refusing,
            sample(frame).length(),
            () -> decode(frame),
            () -> sample(frame),
            device),
        FOREVER);
  }

  /** At the other end of the line; it hears one answer to each frame, and forgets what it sent. */
  private final class Device implements Sender {
    private final AtomicBoolean answered = new AtomicBoolean();

    @Override
    public boolean keeps() {
      return false;
    }

    @Override
    public void recorded(List<Outcome> outcomes) {
      if (answered.compareAndSet(false, true)) {
        refusing = false;
        outcomes.forEach(SerialIntake.this::answer);
      }
    }

    @Override
    public void waits() {
      unrecorded(Replies.waiting(config.profile()));
    }

    @Override
    public void lost() {
      unrecorded(Replies.refused(config.profile()));
    }

    private void unrecorded(Optional<byte[]> answer) {
      if (answered.compareAndSet(false, true)) {
        refusing = answer.isPresent();
        answer.ifPresent(send::test);
      }
    }
  }

  private List<Decoded> decode(Frame frame) {
    if (frame instanceof Whole whole) {
      return decoder.decode(whole.bytes());
    } else if (frame instanceof Broken broken) {
      return List.of(new Malformed(broken.reason(), broken.sample()));
    }
    throw new IllegalStateException("nothing is done with " + frame.getClass());
  }

  private static Sample sample(Frame frame) {
    return frame instanceof Broken broken ? broken.sample() : Sample.of(((Whole) frame).bytes());
  }

  private void answer(Outcome outcome) {
    reply(outcome).ifPresent(send::test);
  }

  private Optional<byte[]> reply(Outcome outcome) {
    if (outcome.event().isPresent()) {
      return accepted(outcome, outcome.event().get());
    }
    Optional<Meaning> scanned = understood(outcome);
    return scanned.isPresent()
        ? Replies.accepted(config.profile(), scanned.get().code())
        : Replies.refused(config.profile());
  }

  /** What a scan was taken for, where it did something. */
  private static Optional<Meaning> understood(Outcome outcome) {
    return outcome.entries().stream()
        .filter(Entry.Scan.class::isInstance)
        .map(e -> ((Entry.Scan) e).meaning())
        .filter(m -> m != Meaning.DECLINED && m != Meaning.NOTHING)
        .findFirst();
  }

  private Optional<byte[]> accepted(Outcome outcome, TorqueEvent event) {
    Optional<Judged> judged =
        outcome.entries().stream()
            .filter(Entry.TorqueTaken.class::isInstance)
            .map(e -> ((Entry.TorqueTaken) e).judged())
            .findFirst();
    Function<Verdict, String> word = Verdict::code;
    String verdict =
        outcome.repeat()
            ? "repeat"
            : judged.flatMap(Judged::announced).map(word).orElse("unjudged");
    return Replies.accepted(
        config.profile(),
        event.wrench(),
        event.number(),
        verdict,
        judged.flatMap(Judged::fastener),
        judged.map(j -> j.effect().code()).orElse("none"));
  }
}
