package witnessmark.soak;

/** What the benches assemble. */
final class Parts {
  /** A thing to confirm, then 36 fasteners in three groups. */
  static final String PROCEDURE =
      """
      [procedure]
      id = "RAM-900"
      revision = "A"
      title = "Rear-axle module, one after the other"
      unit-pattern = "ATR-[0-9]{8}"

      [[step]]
      id = "seats-clean"
      kind = "attest"
      title = "Seats"
      statement = "The frame's seats are clean and free of paint."

      [[step]]
      id = "carrier"
      kind = "tighten"
      title = "Axle carriers"
      fasteners = 12
      order = "strict"
      torque = "33 N.m"
      tolerance = "10 %"
      angle-min = "20"
      angle-max = "60"

      [[step]]
      id = "cross-member"
      kind = "tighten"
      title = "Cross-member to frame"
      fasteners = 12
      torque = "45 N.m"
      tolerance = "10 %"
      angle-min = "20"
      angle-max = "60"
      after = ["carrier"]

      [[step]]
      id = "caliper"
      kind = "tighten"
      title = "Caliper brackets"
      fasteners = 12
      torque = "70 N.m"
      tolerance = "8 %"
      angle-min = "20"
      angle-max = "60"
      """;

  private Parts() {}
}
