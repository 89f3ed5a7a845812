package witnessmark.publish;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import witnessmark.entry.Rule;
import witnessmark.job.Choices;
import witnessmark.job.Due;
import witnessmark.job.JobState;
import witnessmark.procedure.AttestStep;
import witnessmark.procedure.MeasureStep;
import witnessmark.procedure.Pass;
import witnessmark.procedure.Pull;
import witnessmark.procedure.Stage;
import witnessmark.procedure.TightenStep;
import witnessmark.torque.Torque;

/** What a station's job waits for, as the retained message says it. */
final class ExpectMessage {
  private ExpectMessage() {}

  static byte[] of(String station, Optional<JobState> job) {
    ObjectNode message = JsonNodeFactory.instance.objectNode();
    message.put("station", station);
    if (job.isEmpty()) {
      message.put("state", "idle");
      message.put("text", "No job is open at this station.");
    } else {
      told(message, job.get(), Due.of(job.get()));
    }
    return message.toString().getBytes(StandardCharsets.UTF_8);
  }

  /** What is to be seen at a station while nothing can be recorded. */
  static byte[] notRecording(String station, String why) {
    ObjectNode message = JsonNodeFactory.instance.objectNode();
    message.put("station", station);
    message.put("state", "not-recording");
    message.put(
        "text",
        "Stop: nothing is being recorded, so nothing counts. Wait until this says what is next. ("
            + why
            + ")");
    return message.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void told(ObjectNode message, JobState job, Due due) {
    message.put("state", due.state().code());
    message.put("job", job.job());
    message.put("unit", job.unit());
    message.put("procedure", job.plan().procedure().id());
    message.put("revision", job.plan().procedure().revision());
    message.put("done", job.passesDone());
    message.put("total", job.plan().passes());
    message.put("text", due.text());
    ArrayNode expect = message.putArray("expect");
    for (int f : due.nonconforming()) {
      ObjectNode item = expect.addObject();
      item.put("fastener", job.plan().name(f));
      item.put("entry", job.condition(f).nonconformity().orElseThrow());
      ArrayNode dispositions = item.putArray("dispositions");
      Choices.of(job, f)
          .forEach(
              (disposition, role) ->
                  dispositions
                      .addObject()
                      .put("disposition", disposition.code())
                      .put("role", role.code()));
    }
    due.questions().forEach(n -> expect.addObject().put("entry", n));
    due.stages().forEach(stage -> stage(expect, job, stage));
  }

  private static void stage(ArrayNode expect, JobState job, Stage stage) {
    if (stage.step() instanceof TightenStep step) {
      job.next(stage).forEach(f -> tighten(expect.addObject(), job, stage, step, f));
      return;
    }
    ObjectNode item = expect.addObject();
    item.put("step", stage.step().id());
    item.put("title", stage.step().title());
    stage.step().note().ifPresent(n -> item.put("note", n));
    stage.step().picture().ifPresent(p -> item.put("picture", p));
    if (stage.step() instanceof AttestStep a) {
      item.put("statement", a.statement());
    } else if (stage.step() instanceof MeasureStep m) {
      m.labels().forEach(l -> item.withArray("labels").add(l));
      item.put("low", m.low().text());
      item.put("high", m.high().text());
      item.put("unit", m.unit());
      m.spread().ifPresent(s -> item.put("spread", s.text()));
    }
  }

  private static void tighten(
      ObjectNode item, JobState job, Stage stage, TightenStep step, int fastener) {
    Pass pass = step.passes().get(stage.pass());
    item.put("step", step.id());
    item.put("fastener", job.plan().name(fastener));
    item.put("pass", pass.name());
    pass.target().ifPresent(t -> target(item, pass, t));
    item.put("low", pass.band().low().digits().text());
    item.put("high", pass.band().high().digits().text());
    item.put("unit", pass.band().low().unit().symbol());
    if (pass.band().high().unit() != pass.band().low().unit()) {
      item.put("highunit", pass.band().high().unit().symbol());
    }
    step.care().tool().adapter().ifPresent(a -> pull(item, Pull.of(pass, a)));
    step.care().tool().acceptance().guard().ifPresent(r -> guarded(item, r));
    pass.angle().ifPresent(a -> item.put("anglelow", a.low().toString()));
    pass.angle().ifPresent(a -> item.put("anglehigh", a.high().toString()));
    step.wrenches().forEach(w -> item.withArray("wrenches").add(w));
    item.put("title", step.title());
    step.note().ifPresent(n -> item.put("note", n));
    step.picture().ifPresent(p -> item.put("picture", p));
  }

  private static void target(ObjectNode item, Pass pass, Torque target) {
    item.put("target", target.digits().text());
    if (target.unit() != pass.band().low().unit()) {
      item.put("targetunit", target.unit().symbol());
    }
  }

  private static void pull(ObjectNode item, Pull pull) {
    pull.target().ifPresent(t -> item.put("pulltarget", t));
    item.put("pulllow", pull.low());
    item.put("pullhigh", pull.high());
  }

  private static void guarded(ObjectNode item, BigDecimal factor) {
    item.put("acceptance", Rule.GUARDED.code());
    item.put("guardfactor", factor.toPlainString());
  }
}
