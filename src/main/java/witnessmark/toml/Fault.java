package witnessmark.toml;

/**
 * One thing wrong in an input file.
 *
 * @param file the file's name as the person gave it
 * @param line from 1
 * @param column from 1
 * @param what what is wrong
 * @param allowed what is allowed, or the likeliest fix
 */
public record Fault(String file, int line, int column, String what, String allowed) {
  /** {@code file:line:column: what is wrong; what is allowed}. */
  @Override
  public String toString() {
    return file + ":" + line + ":" + column + ": " + what + "; " + allowed;
  }
}
