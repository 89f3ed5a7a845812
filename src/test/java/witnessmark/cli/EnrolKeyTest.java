package witnessmark.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Base64;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import witnessmark.badge.SmallOrder;

/** What is no key is not enrolled. */
class EnrolKeyTest extends ProofDesk {
  /** SubjectPublicKeyInfo of an Ed25519 key up to its bytes (RFC 8410, section 10.1). */
  private static final String HEAD = "302a300506032b6570032100";

  @Test
  void aKeyForWhichAnybodyCanSignIsRefused() throws IOException {
    for (byte[] key : SmallOrder.points()) {
      byte[] der = HexFormat.of().parseHex(HEAD + HexFormat.of().formatHex(key));
      String pem =
          "-----BEGIN PUBLIC KEY-----\n"
              + Base64.getEncoder().encodeToString(der)
              + "\n-----END PUBLIC KEY-----\n";
      String file = Files.writeString(directory.resolve("k.pub"), pem).toString();
      Said said =
          say("operator", "key", "enrol", "badge-07", "--public", file, "--by=badge-07", data);
      assertThat(said.status()).as(said.toString()).isEqualTo(3);
      assertThat(said.err().replaceAll("\\s+", " "))
          .contains("is no Ed25519 public key that only its holder can sign for")
          .contains("Name the .pub file that operator key make wrote.");
    }
    assertThat(say("trace", "--kind=operator-key-enrolled", data).status()).isEqualTo(1);
  }
}
