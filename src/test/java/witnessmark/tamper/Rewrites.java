package witnessmark.tamper;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import witnessmark.entry.Entry;
import witnessmark.ledger.LogKey;

/** Other histories in place of the log's, made by its own program, with every row that follows. */
final class Rewrites {
  /** What only the stolen key, or an older copy, can do: verify alone must be content with it. */
  static final String STOLEN = "history rewritten, signed with the stolen key";

  static final String OLDER = "an older copy of the whole directory put back";

  private final Victim victim;
  private final String note;

  Rewrites(Victim victim) {
    this.victim = victim;
    this.note = History.signed(victim.key(), victim.entries());
  }

  List<Kind> all() {
    return List.of(
        Kind.of("history rewritten, checkpoint left as it was", 3, this::unsigned),
        Kind.of("history rewritten, signed with another key", 2, (c, r) -> other(c, r, false)),
        Kind.of("the same, with `ledger.pub` of that key", 2, (c, r) -> other(c, r, true)),
        Kind.of(STOLEN, 4, this::stolen),
        Kind.of(OLDER, 2, this::older),
        Kind.of("an older checkpoint put back alone", 1, this::olderNote));
  }

  private void unsigned(Copy copy, Random random) {
    replace(copy, changed(random), note, victim.key().verifierLine());
  }

  private void other(Copy copy, Random random, boolean withKey) {
    LogKey own = LogKey.generate(victim.key().name());
    List<Entry> entries = changed(random);
    String line = (withKey ? own : victim.key()).verifierLine();
    replace(copy, entries, History.signed(own, entries), line);
  }

  private void stolen(Copy copy, Random random) {
    List<Entry> entries = changed(random);
    replace(copy, entries, History.signed(victim.key(), entries), victim.key().verifierLine());
  }

  private void older(Copy copy, Random random) {
    List<Entry> entries = beginning(random);
    replace(copy, entries, History.signed(victim.key(), entries), victim.key().verifierLine());
  }

  private void olderNote(Copy copy, Random random) {
    copy.put("UPDATE checkpoint SET note = ?", History.signed(victim.key(), beginning(random)));
  }

  private List<Entry> beginning(Random random) {
    return victim.entries().subList(0, 1 + random.nextInt(victim.entries().size() - 1));
  }

  /** One entry left out, doubled, exchanged with another, or all from one on left out. */
  private List<Entry> changed(Random random) {
    List<Entry> entries = new ArrayList<>(victim.entries());
    int at = 5 + random.nextInt(entries.size() - 6);
    switch (random.nextInt(4)) {
      case 0 -> entries.remove(at);
      case 1 -> entries.add(at, twice(entries, at));
      case 2 -> entries.add(entries.remove(at));
      default -> {
        Entry before = twice(entries, at - 1);
        entries.set(at, before);
      }
    }
    return entries.equals(victim.entries()) ? entries.subList(0, at) : entries;
  }

  /** An entry that may be there twice: the store itself has no two jobs of one name. */
  private static Entry twice(List<Entry> entries, int at) {
    return entries.get(entries.get(at) instanceof Entry.JobOpened ? at - 1 : at);
  }

  private static void replace(Copy copy, List<Entry> entries, String note, String line) {
    Path directory = copy.verifier().getParent();
    try (Stream<Path> files = Files.walk(directory)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    History.write(directory, entries, note, line);
  }
}
