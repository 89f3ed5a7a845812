package witnessmark.ledger.verify;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.time.Duration;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;

class ReadAheadTest {
  /** Rows 0 to {@code rows} - 1, and then their end or a fault. */
  private static final class Numbers implements Rows {
    private final int rows;
    private final Exception fault;
    private final int size;
    private volatile int row = -1;
    private volatile boolean closed;

    Numbers(int rows, int size, Exception fault) {
      this.rows = rows;
      this.size = size;
      this.fault = fault;
    }

    @Override
    public boolean next() throws IOException {
      assertThat(closed).isFalse();
      row++;
      if (row == rows && fault instanceof IOException e) {
        throw e;
      } else if (row == rows && fault instanceof RuntimeException e) {
        throw e;
      }
      return row < rows;
    }

    @Override
    public Object value(int column) {
      return column == 0 ? (Object) (long) row : new byte[size];
    }

    @Override
    public void close() {
      closed = true;
    }
  }

  @Test
  void rowsComeInOrderUpToTheirEnd() throws IOException {
    for (int rows : new int[] {0, 1, 255, 256, 257, 5000}) {
      Numbers numbers = new Numbers(rows, 10, null);
      try (ReadAhead ahead = new ReadAhead(numbers, 2)) {
        for (long n = 0; n < rows; n++) {
          assertThat(ahead.next()).isTrue();
          assertThat(ahead.value(0)).isEqualTo(n);
          assertThat(ahead.value(1)).isInstanceOf(byte[].class);
        }
        assertThat(ahead.next()).isFalse();
        assertThat(ahead.next()).isFalse();
      }
      assertThat(numbers.closed).isTrue();
    }
  }

  @Test
  void aFaultComesAfterTheRowsBeforeIt() throws IOException {
    for (Exception fault : new Exception[] {new IOException("torn"), new IllegalStateException()}) {
      try (ReadAhead ahead = new ReadAhead(new Numbers(300, 10, fault), 2)) {
        for (int n = 0; n < 300; n++) {
          assertThat(ahead.next()).isTrue();
        }
        assertThatThrownBy(ahead::next).isSameAs(fault);
      }
    }
  }

  @Test
  void largeRowsAreNotReadFarAhead() throws Exception {
    Numbers numbers = new Numbers(10_000, 300_000, null);
    try (ReadAhead ahead = new ReadAhead(numbers, 2)) {
      assertThat(ahead.next()).isTrue();
      Thread.sleep(200);
      // four rows fill a batch; four are ready, one is in hand and one is being made
      assertThat(numbers.row).isLessThanOrEqualTo(4 * 6);
    }
  }

  @Test
  void whoeverStopsEarlyIsNotKept() {
    Assertions.assertTimeoutPreemptively(
        Duration.ofSeconds(10),
        () -> {
          for (int round = 0; round < 20; round++) {
            Numbers numbers = new Numbers(1_000_000, 10, null);
            try (ReadAhead ahead = new ReadAhead(numbers, 2)) {
              assertThat(ahead.next()).isTrue();
            }
            assertThat(numbers.closed).isTrue();
          }
        });
  }
}
