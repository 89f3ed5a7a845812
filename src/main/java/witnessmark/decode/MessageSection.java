package witnessmark.decode;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import witnessmark.toml.Nearest;
import witnessmark.toml.Section;

/** Reads the table {@code [message]} of a profile. */
final class MessageSection {
  /** The keys that each form reads, the one that names its fields first. */
  private static final Map<String, List<String>> KEYS =
      Map.of(
          "columns", List.of("columns", "delimiter"),
          "pattern", List.of("pattern"),
          "json", List.of("pointers"));

  private static final List<EventField> REQUIRED =
      List.of(EventField.WRENCH, EventField.TORQUE, EventField.UNIT);

  private final Section message;

  private MessageSection(Section message) {
    this.message = message;
  }

  static Optional<MessageForm> read(Section message, Values values) {
    return new MessageSection(message).read(values);
  }

  private Optional<MessageForm> read(Values values) {
    Optional<String> name =
        message.requiredText("form", "\"columns\", \"pattern\" or \"json\" is allowed");
    KEYS.values().forEach(keys -> keys.forEach(message::has));
    message.finish();
    if (name.isEmpty()) {
      return Optional.empty();
    }
    if (!KEYS.containsKey(name.get())) {
      message.fault(
          "form", "unknown form \"" + name.get() + "\"", Nearest.hint(name.get(), KEYS.keySet()));
      return Optional.empty();
    }
    faultForeign(name.get());
    Optional<MessageForm> form = form(name.get());
    form.ifPresent(f -> faultMissing(KEYS.get(name.get()).get(0), f, values));
    return form;
  }

  private void faultForeign(String form) {
    for (List<String> keys : KEYS.values()) {
      for (String key : keys) {
        if (message.has(key) && !KEYS.get(form).contains(key)) {
          message.fault(
              key, "\"" + key + "\" has no use with form = \"" + form + "\"", "remove it");
        }
      }
    }
  }

  private void faultMissing(String key, MessageForm form, Values values) {
    if (form.scans()) {
      faultBesideScan(key, form);
      return;
    }
    for (EventField field : REQUIRED) {
      if (!form.gives().contains(field) && !values.fixed().containsKey(field)) {
        message.fault(
            key,
            "nothing gives the " + field.code(),
            field == EventField.TORQUE
                ? "name it in " + key
                : "name it in " + key + ", or fix it in [values]");
      }
    }
  }

  private void faultBesideScan(String key, MessageForm form) {
    for (EventField field : form.gives()) {
      if (!EventField.OF_SCANS.contains(field)) {
        message.fault(
            key,
            field.code() + " stands beside scan, and no message is both",
            "beside scan only operator is allowed");
      }
    }
  }

  private Optional<MessageForm> form(String name) {
    if (name.equals("columns")) {
      return ColumnsReader.read(message);
    }
    return name.equals("pattern") ? shape() : pointers();
  }

  private Optional<MessageForm> shape() {
    Optional<Shape> shape =
        message
            .requiredRead(
                "pattern",
                "write a pattern whose named groups are fields, e.g. (?P<torque>[0-9.]+)",
                ProfilePattern::compile)
            .map(Shape::new);
    shape.ifPresent(
        s -> {
          for (String group : s.pattern().namedGroups().keySet()) {
            if (EventField.of(group).isEmpty()) {
              message.fault(
                  "pattern",
                  "the group \"" + group + "\" is no field",
                  Nearest.hint(group, EventField.codes()));
            }
          }
        });
    return shape.map(s -> s);
  }

  private Optional<MessageForm> pointers() {
    if (!message.has("pointers")) {
      message.fault(
          "pointers",
          "message has no \"pointers\"",
          "write pointers = { wrench = \"/...\", torque = \"/...\", unit = \"/...\" }");
    }
    return message.section("pointers").map(MessageSection::pointers);
  }

  private static MessageForm pointers(Section table) {
    Map<EventField, Pointer> pointers = new EnumMap<>(EventField.class);
    for (String key : table.keys()) {
      Optional<EventField> field = EventField.of(key);
      if (field.isEmpty()) {
        table.fault(key, "\"" + key + "\" is no field", Nearest.hint(key, EventField.codes()));
      } else {
        table
            .read(key, "write a JSON Pointer like \"/peak/value\" (RFC 6901)", Pointer::parse)
            .ifPresent(p -> pointers.put(field.get(), p));
      }
    }
    return new Pointers(pointers);
  }
}
