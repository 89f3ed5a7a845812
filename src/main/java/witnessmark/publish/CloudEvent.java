package witnessmark.publish;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.charset.StandardCharsets;
import witnessmark.entry.Entry;
import witnessmark.entry.Moments;

/** An entry as a CloudEvents 1.0 document. */
final class CloudEvent {
  private CloudEvent() {}

  /**
   * @param bridge the bridge's name, which makes the event's source
   * @param n the entry's number, which is the event's id
   * @param data what is told of it; its job and fastener make the event's subject
   */
  static byte[] of(String bridge, long n, String type, Entry entry, ObjectNode data) {
    ObjectNode event = JsonNodeFactory.instance.objectNode();
    event.put("specversion", "1.0");
    event.put("id", Long.toString(n));
    event.put("source", "witnessmark:" + bridge);
    event.put("type", type);
    event.put("time", Moments.text(entry.at()));
    event.put("datacontenttype", "application/json");
    if (data.has("job")) {
      String fastener = data.has("fastener") ? "/" + data.get("fastener").textValue() : "";
      event.put("subject", data.get("job").textValue() + fastener);
    }
    event.set("data", data);
    return event.toString().getBytes(StandardCharsets.UTF_8);
  }
}
