package witnessmark.record;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import witnessmark.entry.Entry;
import witnessmark.entry.Reason;
import witnessmark.job.JobState;
import witnessmark.job.Released;

/** One job's entries as they pass, and its state before its end. */
final class Course {
  final Entry.JobOpened opened;
  final Released released;
  final List<Numbered> life = new ArrayList<>();
  final List<Numbered> acts = new ArrayList<>();
  final List<Numbered> corrections = new ArrayList<>();
  final List<Numbered> late = new ArrayList<>();

  /** The newest entry that decided about a torque event, by the event's. */
  final Map<Long, Long> decided = new HashMap<>();

  /** The newest state while it was unfinished. */
  JobState state;

  long count;

  Course(Entry.JobOpened opened, Released released) {
    this.opened = opened;
    this.released = released;
  }

  /**
   * @param now the job after the entry; null once it has ended
   */
  void take(long n, Entry entry, JobState now) {
    if (now != null) {
      state = now;
    }
    Numbered numbered = new Numbered(n, entry);
    if (entry instanceof Entry.TorqueTaken t && t.judged().reason() == Reason.LATE_FOR_ENDED_JOB) {
      late.add(numbered);
      return;
    }
    if (entry instanceof Entry.Scan) {
      return;
    }
    count++;
    if (entry instanceof Entry.Assigned a) {
      decided.put(a.assigns(), n);
      corrections.add(numbered);
    } else if (entry instanceof Entry.Reread r) {
      decided.put(r.rereads(), n);
      corrections.add(numbered);
    } else if (entry instanceof Entry.SetAside) {
      corrections.add(numbered);
    } else if (entry instanceof Entry.Attested
        || entry instanceof Entry.Measured
        || entry instanceof Entry.Disposed) {
      acts.add(numbered);
    } else if (!(entry instanceof Entry.TorqueTaken)) {
      life.add(numbered);
    }
  }
}
