package witnessmark.ledger.verify;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;

/**
 * A signing key of the tests: the seeds and public keys of RFC 8032 section 7.1, which everybody
 * knows.
 */
record TestKey(String name, String seed, String publicKey) {
  static final String ORIGIN = "witnessmark.local/log/0123456789abcdef";

  static TestKey first(String name) {
    return new TestKey(
        name,
        "9d61b19deffd5a60ba844af492ec2cc44449c5697b326919703bac031cae7f60",
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a");
  }

  static TestKey second(String name) {
    return new TestKey(
        name,
        "4ccd089b28ff96da9db6c346ec114e0f5b8a319f35aba624da8cf6ed4fb8a6fb",
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c");
  }

  static TestKey third(String name) {
    return new TestKey(
        name,
        "c5aa8df43f9f837bedb7442f31dcb7b166d38535076f094b85ce3a2e0b4458f7",
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025");
  }

  /** The voucher of this key for another, to stand in an entry, as docs/ledger-format.md says. */
  String voucher(TestKey next, long n) {
    return note(
        "witnessmark.local/log-key-voucher@v1\n"
            + name
            + "\n"
            + next.verifierKey()
            + "\n"
            + n
            + "\n");
  }

  String verifierKey() {
    return name
        + "+"
        + HexFormat.of().formatHex(id())
        + "+"
        + Base64.getEncoder().encodeToString(typed());
  }

  private byte[] typed() {
    return HexFormat.of().parseHex("01" + publicKey);
  }

  byte[] id() {
    byte[] hash = Sha.of((name + "\n").getBytes(StandardCharsets.UTF_8), typed());
    return Arrays.copyOf(hash, 4);
  }

  byte[] sign(byte[] text) {
    try {
      byte[] pkcs8 = HexFormat.of().parseHex("302e020100300506032b657004220420" + seed);
      Signature signature = Signature.getInstance("Ed25519");
      signature.initSign(
          KeyFactory.getInstance("Ed25519").generatePrivate(new PKCS8EncodedKeySpec(pkcs8)));
      signature.update(text);
      return signature.sign();
    } catch (GeneralSecurityException e) {
      throw new AssertionError(e);
    }
  }

  /** A signed note over the text, with {@code garbage} after the signature's bytes. */
  String note(String text, byte... garbage) {
    byte[] signature = sign(text.getBytes(StandardCharsets.UTF_8));
    byte[] all = Arrays.copyOf(id(), 4 + signature.length + garbage.length);
    System.arraycopy(signature, 0, all, 4, signature.length);
    System.arraycopy(garbage, 0, all, 4 + signature.length, garbage.length);
    return text + "\n\u2014 " + name + " " + Base64.getEncoder().encodeToString(all) + "\n";
  }

  String checkpoint(long size, byte[] root) {
    return note(name + "\n" + size + "\n" + Base64.getEncoder().encodeToString(root) + "\n");
  }
}
