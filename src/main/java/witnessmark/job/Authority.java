package witnessmark.job;

import java.util.EnumMap;
import java.util.Map;
import witnessmark.entry.Disposition;
import witnessmark.entry.Role;
import witnessmark.procedure.Criticality;

/** The least role that each decision on a nonconforming fastener takes. */
public final class Authority {
  private static final Map<Criticality, Map<Disposition, Role>> LEAST =
      Map.of(
          Criticality.OTHER, row(Role.TECHNICIAN, Role.TECHNICIAN, Role.QUALITY, Role.QUALITY),
          Criticality.FUNCTION, row(Role.TECHNICIAN, Role.TECHNICIAN, Role.QUALITY, Role.QUALITY),
          Criticality.DANGER, row(Role.SECOND, Role.SECOND, Role.QUALITY, Role.QUALITY));

  private Authority() {}

  public static Role least(Criticality criticality, Disposition disposition) {
    return LEAST.get(criticality).get(disposition);
  }

  private static Map<Disposition, Role> row(Role rework, Role replace, Role useAsIs, Role scrap) {
    return new EnumMap<>(
        Map.of(
            Disposition.REWORK, rework,
            Disposition.REPLACE, replace,
            Disposition.USE_AS_IS, useAsIs,
            Disposition.SCRAP, scrap));
  }
}
