package witnessmark.publish;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import witnessmark.entry.Entry;

/** What a scan was taken for and what came of it, as a CloudEvents 1.0 document. */
final class ScanEvent {
  private ScanEvent() {}

  static byte[] of(String bridge, long n, Entry.Scan entry) {
    ObjectNode data = JsonNodeFactory.instance.objectNode();
    data.put("entry", n);
    data.put("station", entry.station());
    data.put("scan", entry.scan());
    entry.operator().ifPresent(o -> data.put("operator", o));
    entry.job().ifPresent(j -> data.put("job", j));
    entry.fastener().ifPresent(f -> data.put("fastener", f));
    entry.procedure().ifPresent(p -> data.put("procedure", p));
    entry.question().ifPresent(q -> data.put("question", q));
    data.put("meaning", entry.meaning().code());
    data.put("text", entry.text());
    return CloudEvent.of(bridge, n, "witnessmark.scan.v1", entry, data);
  }
}
