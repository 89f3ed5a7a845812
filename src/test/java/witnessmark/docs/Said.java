package witnessmark.docs;

/**
 * A sentence that the program says to a person.
 *
 * @param section the heading of docs/sentences.md under which it stands
 * @param code the word of its row there
 */
record Said(String section, String code, String sentence) {}
