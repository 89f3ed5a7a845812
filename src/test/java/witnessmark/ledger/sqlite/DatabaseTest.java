package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

class DatabaseTest {
  private static String said(SQLiteErrorCode code) {
    SQLiteException fault = new SQLiteException("words of the library", code);
    return Database.failure("opened", Path.of("data/ledger.db"), fault).getMessage();
  }

  @Test
  void aDirectoryThatMayNotBeWrittenToIsSaidInOurWords() {
    String text =
        "The log data/ledger.db cannot be opened: its directory must be writable, and this user may"
            + " not write to it. Run as the user who owns it, or make it writable.";
    assertThat(said(SQLiteErrorCode.SQLITE_READONLY_DIRECTORY)).isEqualTo(text);
    assertThat(said(SQLiteErrorCode.SQLITE_READONLY)).isEqualTo(text);
  }

  @Test
  void aDamagedFileIsNotToBeMendedInPlace() {
    assertThat(said(SQLiteErrorCode.SQLITE_CORRUPT))
        .isEqualTo(
            "The log data/ledger.db cannot be opened: words of the library. The file is damaged:"
                + " keep it as it is, see what is left of it with witnessmark ledger verify, then"
                + " move its directory aside and put a backup in its place with witnessmark ledger"
                + " restore.");
  }

  @Test
  void anyOtherTroubleIsToldAsTheLibraryTellsIt() {
    assertThat(said(SQLiteErrorCode.SQLITE_FULL))
        .startsWith("The log data/ledger.db cannot be opened: ")
        .contains("words of the library")
        .endsWith(". Check that the disk has room and is writable, and that the file is whole.");
  }
}
