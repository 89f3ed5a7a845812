package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A made-up history of a shop: entries, and the job rows after the last of them. */
final class Shop {
  private static final String AT = "2026-11-25T10:02:03.311Z";

  final List<Made> entries = new ArrayList<>();
  final Map<String, Object[]> jobs = new LinkedHashMap<>();

  /** A history of {@code size} entries, the same each time. */
  static Shop of(int size) {
    Shop shop = new Shop();
    shop.setUp();
    for (int job = 1; shop.entries.size() < size; job++) {
      shop.run("J-" + job, size);
    }
    while (shop.entries.size() > size) {
      shop.entries.remove(shop.entries.size() - 1);
    }
    return shop;
  }

  private void setUp() {
    add("log-opened", "'origin':'" + TestKey.ORIGIN + "'", "scope", "shop");
    // /operator is the last choice for the column operator.
    add(
        "operator-enrolled",
        "'operator':'badge-07','name':'Ä. Ö. \\u00e9'",
        "scope",
        "shop",
        "operator",
        "badge-07");
    // /by goes before /operator.
    add(
        "wrench-enrolled",
        "'wrench':'TW-0417','low':'20 N.m','high':'100 N.m','calibrated':'2026-11-01T00:00:00.000Z',"
            + "'due':'2027-11-01T00:00:00.000Z','by':'badge-01','operator':'badge-07'",
        "scope",
        "shop",
        "wrench",
        "TW-0417",
        "operator",
        "badge-01");
    add(
        "procedure-released",
        "'procedure':'RAM-210','revision':'C','text':'','by':'badge-01'",
        "scope",
        "shop",
        "operator",
        "badge-01");
    // Its scope is the shop's although it has a job.
    add(
        "operator-at-station",
        "'job':'J-0','station':'bench-1','operator':'badge-07'",
        "scope",
        "shop",
        "job",
        "J-0",
        "station",
        "bench-1",
        "operator",
        "badge-07");
    // A kind nobody knows, without a job, with fields of other types than text.
    add(
        "weather-noted",
        "'station':7,'event':'none','fastener':null,'wrench':{'a':[1]}",
        "scope",
        "none");
  }

  private void run(String job, int size) {
    int opened = entries.size();
    if (opened < size) {
      jobs.put(
          job,
          new Object[] {
            job, "ATR-26-0147", "RAM-210", "C", "bench-1", "open", (long) opened, null
          });
    }
    add(
        "job-opened",
        "'job':'"
            + job
            + "','unit':'ATR-26-0147','procedure':'RAM-210','revision':'C','station':'bench-1','released':3",
        "scope",
        "job",
        "job",
        job,
        "station",
        "bench-1");
    for (int event = 0; event < 7; event++) {
      torque(job, opened * 10L + event);
    }
    status(job, "job-suspended", "", "suspended", size);
    resumed(job, size);
    torque(job, 5_000_000_000L + opened);
    boolean abandoned = opened % 24 == 6;
    if (entries.size() < size) {
      jobs.get(job)[7] = (long) entries.size();
    }
    status(
        job,
        abandoned ? "job-abandoned" : "job-closed",
        abandoned ? ",'because':'frame cracked'" : "",
        abandoned ? "abandoned" : "closed",
        size);
  }

  private void resumed(String job, int size) {
    if (entries.size() < size) {
      jobs.get(job)[4] = "bench-2";
    }
    status(job, "job-resumed", ",'station':'bench-2'", "open", size, "station", "bench-2");
  }

  private void status(
      String job, String kind, String more, String status, int size, Object... columns) {
    if (entries.size() < size) {
      jobs.get(job)[5] = status;
    }
    Object[] all = new Object[4 + columns.length];
    all[0] = "scope";
    all[1] = "job";
    all[2] = "job";
    all[3] = job;
    System.arraycopy(columns, 0, all, 4, columns.length);
    add(kind, "'job':'" + job + "'" + more, all);
  }

  private void torque(String job, long number) {
    add(
        "torque",
        "'job':'"
            + job
            + "','station':'bench-1','fastener':'carrier-left/3','wrench':'other','event':{'wrench':"
            + "'TW-0417','number':"
            + number
            + ",'operator':'badge-07','torque':'32.54','unit':'N.m'},'by':'badge-02',"
            + "'verdict':'in-band','effect':'credited','fingerprint':'f"
            + number
            + "','raw':'{\\'torque\\':\\'32.54\\'}'",
        "scope",
        "job",
        "job",
        job,
        "station",
        "bench-1",
        "fastener",
        "carrier-left/3",
        "wrench",
        "TW-0417",
        "number",
        number,
        "operator",
        "badge-07",
        "verdict",
        "in-band",
        "effect",
        "credited",
        "fingerprint",
        "f" + number);
  }

  /** Appends an entry as it is, with its row. */
  Shop with(String json, String kind, String scope) {
    Made made = new Made(json.getBytes(StandardCharsets.UTF_8), new LinkedHashMap<>());
    made.trace().put("kind", kind);
    made.trace().put("at", AT);
    made.trace().put("scope", scope);
    entries.add(made);
    return this;
  }

  /** Appends an entry of a kind that nobody knows. */
  Shop more(int count) {
    for (int i = 0; i < count; i++) {
      add("weather-noted", "'text':'" + entries.size() + "'", "scope", "none");
    }
    return this;
  }

  /** Appends the change from one key to another, as docs/ledger-format.md says. */
  Shop changed(TestKey from, TestKey to) {
    return changed(from, to, from.voucher(to, entries.size()));
  }

  Shop changed(TestKey from, TestKey to, String voucher) {
    return with(KeyEntry.of(from, to, voucher), "log-key-changed", "shop");
  }

  private void add(String kind, String more, Object... columns) {
    String comma = more.isEmpty() ? "" : ",";
    Made made =
        Made.of("{'v':1,'kind':'" + kind + "','at':'" + AT + "'" + comma + more + "}", columns);
    made.trace().put("kind", kind);
    made.trace().put("at", AT);
    entries.add(made);
  }
}
