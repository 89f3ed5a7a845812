package witnessmark.certificate;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;

/** Compares what can be read on the pages of two files. */
final class PageTexts {
  private static final int LISTED = 10;
  private static final int SHOWN = 120;
  private static final long SECONDS = 30;

  private PageTexts() {}

  /** What differs, a sentence each; the first ten lines of it. */
  static List<String> differences(byte[] file, byte[] made) {
    List<List<String>> ours = read(made);
    List<List<String>> theirs;
    try {
      theirs = guarded(file);
    } catch (IOException e) {
      return List.of("the text of its pages cannot be read: " + clean(e.getMessage()));
    }
    List<String> differences = new ArrayList<>();
    if (ours.size() != theirs.size()) {
      differences.add("the file has " + theirs.size() + " pages, the entries make " + ours.size());
    }
    for (int p = 0; p < Math.min(ours.size(), theirs.size()); p++) {
      String page = "page " + (p + 1);
      more(theirs.get(p), ours.get(p))
          .forEach(l -> differences.add(page + " says, and the entries do not: " + clean(l)));
      more(ours.get(p), theirs.get(p))
          .forEach(l -> differences.add(page + " does not say, and the entries do: " + clean(l)));
    }
    return differences.size() > LISTED ? differences.subList(0, LISTED) : differences;
  }

  /** The lines of one page that the other has less often. */
  private static List<String> more(List<String> page, List<String> other) {
    Map<String, Integer> counts = new HashMap<>();
    other.forEach(l -> counts.merge(l, 1, Integer::sum));
    List<String> more = new ArrayList<>();
    for (String line : page) {
      if (counts.merge(line, -1, Integer::sum) < 0) {
        more.add(line);
      }
    }
    return more;
  }

  /** A stranger's file may make a reader of documents work without end. */
  private static List<List<String>> guarded(byte[] file) throws IOException {
    CompletableFuture<List<List<String>>> reading = new CompletableFuture<>();
    Thread thread =
        new Thread(
            () -> {
              try {
                reading.complete(read(file));
              } catch (RuntimeException | StackOverflowError | OutOfMemoryError e) {
                reading.completeExceptionally(e);
              }
            },
            "page-texts");
    thread.setDaemon(true);
    thread.start();
    try {
      return reading.get(SECONDS, TimeUnit.SECONDS);
    } catch (ExecutionException e) {
      throw new IOException("a part of it is damaged", e);
    } catch (TimeoutException e) {
      throw new IOException("it takes longer than " + SECONDS + " seconds", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("the check was stopped", e);
    }
  }

  /** The lines of each page. */
  static List<List<String>> read(byte[] file) {
    try (PDDocument document = Loader.loadPDF(file)) {
      List<List<String>> pages = new ArrayList<>();
      for (int p = 1; p <= document.getNumberOfPages(); p++) {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setSortByPosition(true);
        stripper.setStartPage(p);
        stripper.setEndPage(p);
        pages.add(stripper.getText(document).lines().map(String::strip).toList());
      }
      return pages;
    } catch (IOException e) {
      throw new IllegalStateException("a document in memory cannot be read", e);
    }
  }

  private static String clean(String line) {
    String one = line.replaceAll("\\p{Cntrl}|\\p{Cf}", "?");
    return one.length() > SHOWN ? one.substring(0, SHOWN) + "…" : one;
  }
}
