package charline.ask;

/**
 * One word of a question.
 *
 * @param typed as typed
 * @param lower in small letters, without signs around it
 * @param comma whether a comma or semicolon came before it
 * @param quoted whether it is a text in quotes, which may have blanks
 */
record Word(String typed, String lower, boolean comma, boolean quoted) {
  boolean is(String other) {
    return !quoted && lower.equals(other);
  }
}
