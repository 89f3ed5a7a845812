package witnessmark.badge;

import java.io.IOException;
import java.security.AlgorithmParameters;
import java.security.GeneralSecurityException;
import java.security.InvalidKeyException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.SecureRandom;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import javax.crypto.BadPaddingException;
import javax.crypto.Cipher;
import javax.crypto.EncryptedPrivateKeyInfo;
import javax.crypto.SecretKey;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.PBEParameterSpec;

/**
 * The private half of a person's Ed25519 key pair. Outside of this process it is only ever sealed:
 * PKCS #8 EncryptedPrivateKeyInfo (RFC 5958) under PBES2 (RFC 8018) with PBKDF2 over HMAC-SHA-256
 * and AES-256 in CBC mode, as PEM.
 */
public final class PrivateHalf {
  /** What the OWASP Password Storage Cheat Sheet asks of PBKDF2-HMAC-SHA256, at least. */
  public static final int ITERATIONS = 600_000;

  /** More would keep a person waiting for no good. */
  private static final int MOST = 20_000_000;

  private static final String PBES2 = "PBEWithHmacSHA256AndAES_256";
  private static final String LABEL = "ENCRYPTED PRIVATE KEY";
  private static final int SALT = 16;

  private final PrivateKey key;

  private PrivateHalf(PrivateKey key) {
    this.key = key;
  }

  /**
   * A new pair.
   *
   * @param privateHalf what signs
   * @param publicHalf what others check with
   */
  public record Pair(PrivateHalf privateHalf, PublicHalf publicHalf) {}

  /** Makes a new pair. */
  public static Pair generate() {
    try {
      KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
      return new Pair(new PrivateHalf(pair.getPrivate()), PublicHalf.of(pair.getPublic()));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java 17 platform has Ed25519", e);
    }
  }

  /** Seals it by a passphrase; never twice the same text. */
  public String sealed(char[] passphrase) {
    byte[] salt = new byte[SALT];
    new SecureRandom().nextBytes(salt);
    byte[] plain = key.getEncoded();
    try {
      Cipher cipher = Cipher.getInstance(PBES2);
      cipher.init(Cipher.ENCRYPT_MODE, secret(passphrase), new PBEParameterSpec(salt, ITERATIONS));
      byte[] encrypted = cipher.doFinal(plain);
      return Pem.write(
          LABEL, Der.encryptedPrivateKeyInfo(cipher.getParameters().getEncoded(), encrypted));
    } catch (GeneralSecurityException | IOException e) {
      throw new IllegalStateException("sealing a key failed", e);
    } finally {
      Arrays.fill(plain, (byte) 0);
    }
  }

  /**
   * Opens a sealed private half.
   *
   * @throws IllegalArgumentException when the text is no such file, or sealed too weakly
   * @throws WrongPassphrase when the passphrase does not open it
   */
  public static PrivateHalf open(String pem, char[] passphrase) {
    EncryptedPrivateKeyInfo sealed;
    AlgorithmParameters parameters;
    try {
      sealed = new EncryptedPrivateKeyInfo(Pem.read(LABEL, pem));
      parameters = sealed.getAlgParameters();
      check(parameters);
    } catch (IOException | GeneralSecurityException e) {
      throw new IllegalArgumentException("it is no sealed private key: " + e.getMessage(), e);
    }
    byte[] plain = null;
    try {
      Cipher cipher = Cipher.getInstance(PBES2);
      cipher.init(Cipher.DECRYPT_MODE, secret(passphrase), parameters);
      plain = cipher.doFinal(sealed.getEncryptedData());
      return new PrivateHalf(
          KeyFactory.getInstance("Ed25519").generatePrivate(new PKCS8EncodedKeySpec(plain)));
    } catch (BadPaddingException | java.security.spec.InvalidKeySpecException e) {
      throw new WrongPassphrase(e);
    } catch (InvalidKeyException e) {
      throw new IllegalArgumentException("it is sealed in another way: " + e.getMessage(), e);
    } catch (GeneralSecurityException e) {
      throw new IllegalArgumentException("it is damaged: " + e.getMessage(), e);
    } finally {
      if (plain != null) {
        Arrays.fill(plain, (byte) 0);
      }
    }
  }

  private static void check(AlgorithmParameters parameters) throws GeneralSecurityException {
    if (parameters == null || !parameters.toString().equals(PBES2)) {
      throw new IllegalArgumentException(
          "it is sealed by " + parameters + "; " + PBES2 + " is expected");
    }
    int iterations = parameters.getParameterSpec(PBEParameterSpec.class).getIterationCount();
    if (iterations < ITERATIONS || iterations > MOST) {
      throw new IllegalArgumentException(
          "its passphrase is hashed "
              + iterations
              + " times; "
              + ITERATIONS
              + " to "
              + MOST
              + " are allowed");
    }
  }

  private static SecretKey secret(char[] passphrase) throws GeneralSecurityException {
    PBEKeySpec spec = new PBEKeySpec(passphrase);
    try {
      return SecretKeyFactory.getInstance(PBES2).generateSecret(spec);
    } finally {
      spec.clearPassword();
    }
  }

  /** The Ed25519 signature over the text, 64 bytes. */
  public byte[] sign(byte[] text) {
    try {
      Signature signature = Signature.getInstance("Ed25519");
      signature.initSign(key);
      signature.update(text);
      return signature.sign();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("signing failed", e);
    }
  }
}
