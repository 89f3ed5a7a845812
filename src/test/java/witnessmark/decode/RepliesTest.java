package witnessmark.decode;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class RepliesTest {
  private static Profile profile(String reply) {
    return ProfileFile.parse(
        "p.toml",
        """
        [profile]
        name = "p"
        charset = "latin1"
        [frame]
        end = "\\n"
        [message]
        form = "columns"
        delimiter = ";"
        columns = ["wrench", "torque", "unit"]
        [reply]
        """
            + reply);
  }

  private static Optional<byte[]> accepted(String template, OptionalLong event, String wrench) {
    return Replies.accepted(
        profile("accepted = '" + template + "'"),
        wrench,
        event,
        "in-band",
        Optional.of("carrier-left/3"),
        "credited");
  }

  @Test
  void placeholdersAreFilledInAndOtherBracesStand() {
    assertThat(
            accepted(
                "{\"w\":\"{wrench}\",\"e\":{event}} {verdict}|{fastener}|{effect}",
                OptionalLong.of(123),
                "TW-0417"))
        .hasValueSatisfying(
            bytes ->
                assertThat(bytes)
                    .asString()
                    .isEqualTo("{\"w\":\"TW-0417\",\"e\":123} in-band|carrier-left/3|credited"));
  }

  @Test
  void anAbsentNumberOrPositionWritesNothing() {
    Optional<byte[]> reply =
        Replies.accepted(
            profile("accepted = 'A|{event}|{fastener}|'"),
            "TW-0417",
            OptionalLong.empty(),
            "unjudged",
            Optional.empty(),
            "none");
    assertThat(reply).hasValueSatisfying(b -> assertThat(b).asString().isEqualTo("A|||"));
  }

  @Test
  void whatIsFilledInIsNotReadAgain() {
    assertThat(accepted("{wrench}", OptionalLong.empty(), "{effect}$1\\"))
        .hasValueSatisfying(b -> assertThat(b).asString().isEqualTo("{effect}$1\\"));
  }

  @Test
  void aReplyIsWrittenInTheProfilesCharset() {
    assertThat(accepted("\u00fc", OptionalLong.empty(), "w")).contains(new byte[] {(byte) 0xFC});
  }

  @Test
  void aProfileWithoutTheReplyGivesNone() {
    assertThat(Replies.refused(profile("accepted = 'A'"))).isEmpty();
    assertThat(Replies.refused(profile("refused = 'N'"))).contains(new byte[] {'N'});
    assertThat(
            Replies.accepted(
                profile("refused = 'N'"),
                "w",
                OptionalLong.empty(),
                "repeat",
                Optional.empty(),
                "none"))
        .isEmpty();
  }
}
