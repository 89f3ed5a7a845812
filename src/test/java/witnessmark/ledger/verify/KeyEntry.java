package witnessmark.ledger.verify;

/** Entries by which keys of the tests vouch for each other. */
final class KeyEntry {
  static final TestKey FIRST = TestKey.first(TestKey.ORIGIN);
  static final TestKey SECOND = TestKey.second(TestKey.ORIGIN);
  static final TestKey THIRD = TestKey.third(TestKey.ORIGIN);

  private KeyEntry() {}

  static String of(TestKey from, TestKey to, String voucher) {
    return "{\"kind\":\"log-key-changed\",\"v\":1,\"at\":\"2026-11-25T10:02:03.311Z\",\"from\":\""
        + from.verifierKey()
        + "\",\"to\":\""
        + to.verifierKey()
        + "\",\"voucher\":\""
        + voucher.replace("\n", "\\n")
        + "\"}";
  }
}
