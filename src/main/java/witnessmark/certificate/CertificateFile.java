package witnessmark.certificate;

/** What can be read from a certificate's bytes without opening it as a document. */
public final class CertificateFile {
  /** The name of the attached proof. */
  public static final String ATTACHMENT = "witnessmark-proof.json";

  private CertificateFile() {}
}
