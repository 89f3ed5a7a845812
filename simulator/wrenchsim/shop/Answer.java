package wrenchsim.shop;

/**
 * What a person says when the bridge asks which fastener a reading was on.
 *
 * @param entry the ledger entry of the verdict that asks
 * @param fastener where the wrench really was
 */
public record Answer(long entry, String fastener) {}
