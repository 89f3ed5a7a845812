package witnessmark.fuzz;

import java.util.List;

/** What the page says before the figures. */
final class Words {
  static final List<String> HEAD =
      """
      # Fuzzing

      Made by `mvn -q -B test-compile exec:exec@fuzz -Dfuzz.inputs=10000000 -Dfuzz.page=docs/fuzzing.md` (exit status 1 when a fault is found; `-Dfuzz.seed=N` for
      other inputs). CI runs the short form, `FuzzTest`. Every parser that meets bytes from outside is given inputs that are made from good ones: words, numbers,
      lines and brackets are left out, repeated, exchanged with those of another input, nested, or blown up; bytes are changed; checkpoints are signed
      anew by the right key over changed texts; the parts of certificates are changed and written anew in the right form, with the right lengths and table of places.

      An input whose *answer* is of a kind not seen before (the sentence without what it quotes and counts) is kept and changed further. That stands in for coverage:
      the parsers answer each way they can go wrong with a sentence of its own. Jazzer (Apache-2.0) would guide by branches, but it rewrites the classes it
      watches, so that neither processor time nor memory could be measured by the input, and it takes a process and a native driver for each parser.

      ## What must hold for each input

      - Nothing is thrown but what the reader documents (`FaultsException`, `NoteException`, `IllegalArgumentException` of keys and certificates).
      - It takes at most 100 ms of the reading thread's own processor time. One that takes more, or more than any before, is read three times again and the least counts.
      - The thread allocates at most a constant and so many bytes for each byte of the input, as the table says. What is *kept* is far less; the TOML
        library allocates the most, up to 7.5 kB for a byte of a text that is nothing but errors. A certificate's streams may swell to 4 MiB and 64 times the file.
      - Serial: the frames are those that a plain second framer cuts, whatever the pieces; each is decoded, or refused with its exact bytes.
      - JSON: what was taken and refused, one behind the other, is the payload byte for byte, but for JSON's own marks between elements; digits are as written.
      - Scans: a sentence that can be shown, and entries that read back as written. TOML: every fault on one line, in the file's order.
      - Checkpoints: what is taken is, to the byte, the note that the key makes over what it says.
      - Proofs and certificates: whatever is proved is in the log, under a checkpoint that was signed. Of one certificate in 400 that is taken the pages are
        compared as well; the comparison itself (PDFBox, guarded by a limit of 30 seconds) is not measured here, and its parser gets fewer inputs.

      ## Found so far

      - A path with a NUL in the configuration ended the reading with an exception. It is a fault at its line now.
      - A TOML file of nothing but errors was listed place by place, three for each line. The first 100 are listed now, and how many more there are.
      - A certificate of 110 kB whose stream swells to 64 MiB took 159 ms and 131 MB (the first run of 10,000,007 inputs, seed 20261126). It is refused after 11 MiB now.
      - An object was made for each byte of a serial line: no fault, but 525 MB of garbage for 32 MB. None is made now.

      Inputs that were found, made as small as they could be, are kept in `src/test/resources/witnessmark/fuzz/found.txt`; `FoundInputsTest` reads them all.
      """
          .lines()
          .toList();

  private Words() {}
}
