package witnessmark.ledger.sqlite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

class TroubleTest {
  private static String said(SQLiteErrorCode code) {
    SQLiteException fault = new SQLiteException("words of the library", code);
    return Trouble.of("opened", Path.of("/data/ledger.db"), fault).getMessage();
  }

  @Test
  void aDirectoryThatMayNotBeWrittenToIsSaidInOurWords() {
    String text =
        "The log /data/ledger.db cannot be opened: nothing can be written to /data. Run as the user"
            + " who owns the log, or, where its file system is mounted read-only, mount it for"
            + " writing.";
    assertThat(said(SQLiteErrorCode.SQLITE_READONLY_DIRECTORY)).isEqualTo(text);
    assertThat(said(SQLiteErrorCode.SQLITE_READONLY)).isEqualTo(text);
  }

  @Test
  void aDamagedFileIsNotToBeMendedInPlace() {
    assertThat(said(SQLiteErrorCode.SQLITE_CORRUPT))
        .isEqualTo(
            "The log /data/ledger.db cannot be opened: words of the library. The file is damaged:"
                + " keep it as it is, see what is left of it with witnessmark ledger verify, then"
                + " move its directory aside and put a backup in its place with witnessmark ledger"
                + " restore.");
  }

  @Test
  void aFullDiskIsSaidInOurWords() {
    String text =
        "The log /data/ledger.db cannot be opened: there is no room left on its disk. Make room"
            + " there.";
    assertThat(said(SQLiteErrorCode.SQLITE_FULL)).isEqualTo(text);
    assertThat(said(SQLiteErrorCode.SQLITE_IOERR_SHMSIZE)).isEqualTo(text);
  }

  @Test
  void anyOtherTroubleIsToldAsTheLibraryTellsIt() {
    assertThat(said(SQLiteErrorCode.SQLITE_IOERR_WRITE))
        .startsWith("The log /data/ledger.db cannot be opened: ")
        .contains("words of the library")
        .endsWith(". Check that the disk has room and is writable, and that the file is whole.");
  }

  @Test
  void anotherProcessThatHoldsTheLogIsSaidAndHowToFindIt(@TempDir Path directory) throws Exception {
    Path file = LogOf.begun(directory, 1).database();
    try (Connection one = DriverManager.getConnection("jdbc:sqlite:" + file);
        Connection other = DriverManager.getConnection("jdbc:sqlite:" + file)) {
      Database.execute(one, "BEGIN IMMEDIATE");
      Database.execute(other, "PRAGMA busy_timeout=1");
      assertThatThrownBy(() -> Database.execute(other, "BEGIN IMMEDIATE"))
          .isInstanceOfSatisfying(
              SQLiteException.class,
              e ->
                  assertThat(Trouble.of("locked for writing", file, e))
                      .hasMessage(
                          "The log "
                              + file
                              + " cannot be locked for writing: another process holds it, and has"
                              + " for some seconds. Which one: fuser -v "
                              + file
                              + " (package psmisc). Wait until it has ended, or end it."));
    }
  }
}
