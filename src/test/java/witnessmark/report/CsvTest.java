package witnessmark.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

/** RFC 4180, section 2: rules 1 (CR LF), 5 and 6 (quotes), 7 (doubled quotes). */
class CsvTest {
  @Test
  void plainCellsStandAsTheyAreAndARowEndsWithCrLf() {
    assertThat(Csv.row(List.of("57", "32.50", "N.m", ""))).isEqualTo("57,32.50,N.m,\r\n");
  }

  @Test
  void commasAndQuotesAreQuoted() {
    assertThat(Csv.row(List.of("a,b", "say \"no\""))).isEqualTo("\"a,b\",\"say \"\"no\"\"\"\r\n");
  }

  @Test
  void whatATerminalWouldObeyIsWrittenOut() {
    assertThat(Csv.row(List.of("\u001b[2Jhi\u202ex\nfake", "caf\u00e9")))
        .isEqualTo("\\u001B[2Jhi\\u202Ex\\u000Afake,caf\u00e9\r\n");
  }

  @Test
  void whatASpreadsheetWouldRunIsMadeText() {
    assertThat(Csv.row(List.of("=1+1", "@SUM(A1)", "+cmd|' /C calc'!A0", "-x", "\t=1")))
        .isEqualTo("'=1+1,'@SUM(A1),'+cmd|' /C calc'!A0,'-x,'\\u0009=1\r\n");
  }

  @Test
  void whatBeginsWithALineEndOrAFullWidthSignIsMadeTextToo() {
    assertThat(Csv.row(List.of("\n=1", "\r=1", "\uFF1D1+1", "\uFF20x", "-1e1")))
        .isEqualTo("'\\u000A=1,'\\u000D=1,'\uFF1D1+1,'\uFF20x,'-1e1\r\n");
  }

  @Test
  void aNegativeNumberStaysANumber() {
    assertThat(Csv.row(List.of("-4.5", "-12"))).isEqualTo("-4.5,-12\r\n");
  }
}
