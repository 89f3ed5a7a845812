package witnessmark.chart;

/**
 * What stands at the foot of a page.
 *
 * @param source by what, when and from which log it was made
 * @param page from 1
 */
record Foot(String source, int page, int pages) {
  String number() {
    return "page " + page + " of " + pages;
  }
}
