package witnessmark.publish;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.Optional;
import witnessmark.entry.Entry;
import witnessmark.entry.Judged;
import witnessmark.torque.Angle;
import witnessmark.torque.Torque;
import witnessmark.torque.TorqueEvent;
import witnessmark.torque.Verdict;

/** A judged torque event as a CloudEvents 1.0 document. */
final class VerdictEvent {
  private VerdictEvent() {}

  /**
   * @param bridge the bridge's name, which makes the event's source
   * @param n the entry's number, which is the event's id
   */
  static byte[] of(String bridge, long n, Entry.TorqueTaken entry) {
    return event(bridge, n, entry, data(n, entry, entry.job(), entry.judged()));
  }

  /**
   * The verdict on an event that a person placed.
   *
   * @param taken the event's own entry, which {@code assigns} names
   */
  static byte[] of(String bridge, long n, Entry.Assigned entry, Entry.TorqueTaken taken) {
    ObjectNode data = data(n, taken, Optional.of(entry.job()), entry.judged());
    data.put("assigns", entry.assigns());
    return event(bridge, n, entry, data);
  }

  /**
   * The verdict on an event that was decided anew.
   *
   * @param taken the event's own entry, which {@code rereads} names
   */
  static byte[] of(String bridge, long n, Entry.Reread entry, Entry.TorqueTaken taken) {
    ObjectNode data = data(n, taken, Optional.of(entry.job()), entry.judged());
    data.put("rereads", entry.rereads());
    data.put("because", entry.because());
    return event(bridge, n, entry, data);
  }

  private static byte[] event(String bridge, long n, Entry entry, ObjectNode data) {
    return CloudEvent.of(bridge, n, "witnessmark.verdict.v1", entry, data);
  }

  private static ObjectNode data(
      long n, Entry.TorqueTaken taken, Optional<String> job, Judged judged) {
    ObjectNode data = JsonNodeFactory.instance.objectNode();
    TorqueEvent event = taken.event();
    Torque torque = event.torque();
    data.put("entry", n);
    data.put("station", taken.station());
    data.put("wrench", event.wrench());
    event.number().ifPresent(number -> data.put("event", number));
    data.put("torque", torque.digits().text());
    data.put("unit", torque.unit().symbol());
    torque.unit().rec20().ifPresent(code -> data.put("unitcode", code));
    judged.atFastener().ifPresent(t -> data.put("atfastener", number(t)));
    event.angle().map(Angle::toString).ifPresent(a -> data.put("angle", a));
    judged.angleTotal().map(Angle::toString).ifPresent(a -> data.put("angletotal", a));
    data.put("direction", event.direction().code());
    job.ifPresent(j -> data.put("job", j));
    judged.fastener().ifPresent(f -> data.put("fastener", f));
    judged.pass().ifPresent(p -> data.put("pass", p));
    judged.announced().map(Verdict::code).ifPresent(v -> data.put("verdict", v));
    data.put("evaluation", judged.announced().map(Verdict::evaluation).orElse("Undefined"));
    judged.low().map(Torque::parse).ifPresent(low -> band(data, low, judged));
    judged.rule().ifPresent(r -> data.put("rule", r.code()));
    judged.guardFactor().ifPresent(r -> data.put("guardfactor", r.text()));
    judged.guard().ifPresent(w -> data.put("guard", number(w)));
    data.put("effect", judged.effect().code());
    data.put("reason", judged.reason().code());
    judged.objections().forEach(o -> data.withArray("objections").add(o.code()));
    data.put("text", judged.text());
    return data;
  }

  /** The number of a torque that is in the unit of the reading. */
  private static String number(String torque) {
    return torque.substring(0, torque.indexOf(' '));
  }

  private static void band(ObjectNode data, Torque low, Judged judged) {
    Torque high = Torque.parse(judged.high().orElseThrow());
    data.put("low", low.digits().text());
    data.put("high", high.digits().text());
    data.put("bandunit", low.unit().symbol());
    if (high.unit() != low.unit()) {
      data.put("highunit", high.unit().symbol());
    }
  }
}
