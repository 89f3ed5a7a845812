package witnessmark.link.mqtt;

import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.cert.X509Certificate;
import java.util.List;
import java.util.Optional;
import javax.net.ssl.KeyManager;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;

/** Makes encrypted sockets from the certificate files of a link. */
final class Tls {
  private static final char[] NO_PASSWORD = new char[0];

  private Tls() {}

  /**
   * Reads the files afresh, so that a renewed certificate serves from the next connection on.
   *
   * @throws IllegalArgumentException when a file is missing, unreadable or does not fit
   */
  static SSLSocketFactory sockets(MqttSettings settings) {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(
          settings.certFile().isPresent()
              ? own(settings.certFile().get(), settings.keyFile().orElseThrow())
              : null,
          trusted(settings.caFile()),
          null);
      return new PromptTlsSockets(context.getSocketFactory());
    } catch (GeneralSecurityException | java.io.IOException e) {
      throw new IllegalArgumentException("the certificate files cannot be used: " + e, e);
    }
  }

  /** Sockets that only look at who answers, and take anybody. */
  static SSLSocketFactory looking() {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      context.init(null, new TrustManager[] {new Anyone()}, null);
      return context.getSocketFactory();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("every Java platform has TLS", e);
    }
  }

  /** Null stands for the runtime's own trust, as {@link SSLContext#init} has it. */
  private static TrustManager[] trusted(Optional<Path> caFile)
      throws GeneralSecurityException, java.io.IOException {
    if (caFile.isEmpty()) {
      return null;
    }
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    int count = 0;
    for (X509Certificate certificate : Pem.certificates(caFile.get())) {
      store.setCertificateEntry("ca-" + count++, certificate);
    }
    TrustManagerFactory factory = TrustManagerFactory.getInstance("PKIX");
    factory.init(store);
    return factory.getTrustManagers();
  }

  private static KeyManager[] own(Path certFile, Path keyFile)
      throws GeneralSecurityException, java.io.IOException {
    List<X509Certificate> chain = Pem.certificates(certFile);
    PrivateKey key = Pem.key(keyFile);
    if (!fits(key, chain.get(0))) {
      throw new IllegalArgumentException(
          "the key in " + keyFile + " does not belong to the certificate in " + certFile);
    }
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    store.setKeyEntry("own", key, NO_PASSWORD, chain.toArray(X509Certificate[]::new));
    KeyManagerFactory factory =
        KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
    factory.init(store, NO_PASSWORD);
    return factory.getKeyManagers();
  }

  private static boolean fits(PrivateKey key, X509Certificate certificate)
      throws GeneralSecurityException {
    if (!key.getAlgorithm().equals(certificate.getPublicKey().getAlgorithm())) {
      return false;
    }
    String algorithm = key.getAlgorithm().equals("RSA") ? "SHA256withRSA" : "SHA256withECDSA";
    byte[] probe = {1, 2, 3};
    Signature signing = Signature.getInstance(algorithm);
    signing.initSign(key);
    signing.update(probe);
    Signature checking = Signature.getInstance(algorithm);
    checking.initVerify(certificate.getPublicKey());
    checking.update(probe);
    return checking.verify(signing.sign());
  }
}
