package witnessmark.link.mqtt;

import java.security.cert.X509Certificate;
import javax.net.ssl.X509TrustManager;

/** Takes every certificate, so that it can be looked at; nothing is ever sent over such a line. */
final class Anyone implements X509TrustManager {
  @Override
  public void checkClientTrusted(X509Certificate[] chain, String how) {
    throw new UnsupportedOperationException("nobody shows us one");
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String how) {
    // to be looked at
  }

  @Override
  public X509Certificate[] getAcceptedIssuers() {
    return new X509Certificate[0];
  }
}
