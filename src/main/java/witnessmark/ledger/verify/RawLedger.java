package witnessmark.ledger.verify;

import java.io.Closeable;
import java.io.IOException;
import java.util.List;

/**
 * A ledger as it is stored, seen at one moment: every method shows the same state, however often
 * the bridge appends meanwhile.
 *
 * <p>A method throws {@code IOException} when the table is missing or damaged; the message says
 * which and why.
 */
public interface RawLedger extends Closeable {
  /** The file's {@code application_id}. */
  long applicationId() throws IOException;

  /** The file's {@code user_version}. */
  long userVersion() throws IOException;

  /** {@code type, name, tbl_name, sql} of the file's own list of its objects. */
  Rows schema() throws IOException;

  /**
   * What the store finds wrong with its own file structure, a sentence each. This may be called by
   * another thread beside all others, and may see a state that is some moments newer.
   */
  List<String> complaints() throws IOException;

  /**
   * {@code n, bytes, link} of table {@code entry}, by {@code n}. Another thread may go through them
   * while all else is read.
   */
  Rows entries() throws IOException;

  /** {@code id, note} of table {@code checkpoint}. */
  Rows checkpoints() throws IOException;

  /** {@code idx, hash} of one level of table {@code tile}, by {@code idx}. */
  Rows tiles(int level) throws IOException;

  /** {@code level, idx} of the tiles whose level is not an integer from 1 to {@code top}. */
  Rows otherTiles(int top) throws IOException;

  /**
   * {@code n, kind, at, scope, job, station, fastener, wrench, number, operator, verdict, effect,
   * fingerprint} of table {@code trace}, by {@code n}, and after them bytes by which a row can be
   * compared at a stroke: for each of the twelve U+001E and, unless it is NULL, itself as text in
   * UTF-8, all with U+001F between. They are NULL when {@code number} is neither integer nor NULL
   * or another column neither text nor NULL; a table whose declaration rules that out is not asked
   * again row by row, because {@link #complaints} tells where it is not so.
   */
  Rows traces() throws IOException;

  /**
   * {@code job, unit, procedure, revision, station, status, opened, ended} of table {@code job}.
   */
  Rows jobs() throws IOException;

  @Override
  void close();
}
