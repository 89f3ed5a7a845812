package witnessmark.pipeline;

/** What signs a person's decisions. */
public interface Pen {
  /** The Ed25519 signature over the text, 64 bytes. */
  byte[] sign(byte[] text);
}
