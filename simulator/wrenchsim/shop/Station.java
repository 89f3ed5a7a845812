package wrenchsim.shop;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import wrenchsim.truth.Happening;
import wrenchsim.wire.ExpectMessage;
import wrenchsim.wire.MalformedMessage;
import wrenchsim.wire.VerdictMessage;

/**
 * A station in one process with its bridge: takes the published bytes, gives back the bytes to
 * send, and never waits. Whoever drives it brings everything that a {@link Deed} makes the bridge
 * publish before asking for the next. Not safe for use by several threads.
 */
public final class Station {
  private final Person person;
  private final Parts parts;
  private Optional<ExpectMessage> expect = Optional.empty();

  /** A station where nothing is expected yet. */
  public Station(Person person, Parts parts) {
    this.person = Objects.requireNonNull(person, "person");
    this.parts = Objects.requireNonNull(parts, "parts");
  }

  /**
   * Takes what the station expects from now on, as published.
   *
   * @throws MalformedMessage when it is not what docs/messages.md says
   */
  public void hearExpect(byte[] payload) throws MalformedMessage {
    expect = Optional.of(ExpectMessage.read(payload));
  }

  /**
   * Takes a verdict as published; gives what it is about, where it is about what was done here.
   *
   * @throws MalformedMessage when it is not what docs/messages.md says
   */
  public Optional<Happening> hearVerdict(byte[] payload) throws MalformedMessage {
    return person.hear(VerdictMessage.read(payload));
  }

  /** What was expected last. */
  public Optional<ExpectMessage> expect() {
    return expect;
  }

  /** Does the next thing; empty where there is nothing to do with a wrench. */
  public Optional<Deed> act() {
    return expect.filter(person::mayAct).map(person::act);
  }

  /** What the bridge asked and the person answers, each once. */
  public List<Answer> answers() {
    return person.answers();
  }

  /** Lets a unit go that nobody will touch any more, so that it takes no memory. */
  public void ship(String unit) {
    parts.ship(unit);
    person.forget(unit);
  }
}
