package witnessmark.ledger.sqlite;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import witnessmark.ledger.Live;
import witnessmark.ledger.Reading;
import witnessmark.ledger.Stored;

/** Counts what is read. */
final class Counting implements Reading {
  private final Reading reading;
  int reads;
  int entries;

  Counting(Reading reading) {
    this.reading = reading;
  }

  private <T> List<T> counted(List<T> found) {
    reads++;
    return found;
  }

  @Override
  public Optional<Stored> entry(long n) {
    reads++;
    entries++;
    return reading.entry(n);
  }

  @Override
  public List<Stored> from(long n, int limit) {
    List<Stored> found = counted(reading.from(n, limit));
    entries += found.size();
    return found;
  }

  @Override
  public List<byte[]> tiles(int level, long index, int limit) {
    return counted(reading.tiles(level, index, limit));
  }

  @Override
  public Optional<String> checkpoint() {
    reads++;
    return reading.checkpoint();
  }

  @Override
  public <T> T atOneMoment(Supplier<T> look) {
    return reading.atOneMoment(look);
  }

  @Override
  public long size() {
    throw new UnsupportedOperationException();
  }

  @Override
  public Live live() {
    throw new UnsupportedOperationException();
  }

  @Override
  public void chunks(Query query, Consumer<List<Stored>> each) {
    throw new UnsupportedOperationException();
  }

  @Override
  public List<Stored> registers(List<String> kinds, long before) {
    return counted(reading.registers(kinds, before));
  }

  @Override
  public List<JobRow> jobs(Optional<String> unit, Optional<String> job, boolean unfinishedOnly) {
    throw new UnsupportedOperationException();
  }

  @Override
  public List<String> stations() {
    throw new UnsupportedOperationException();
  }

  @Override
  public long cursor(String name) {
    throw new UnsupportedOperationException();
  }

  @Override
  public void cursor(String name, long n) {
    throw new UnsupportedOperationException();
  }

  @Override
  public void close() {
    reading.close();
  }
}
