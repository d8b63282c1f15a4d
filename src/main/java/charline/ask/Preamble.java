package charline.ask;

import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A question with what somebody says before they ask: "I was off sick last week, what did Mats burn
 * last week?"
 *
 * @param told what is said before
 * @param asked the question itself
 * @param plainly whether "so" or a colon parts the two
 */
record Preamble(String told, String asked, boolean plainly) {
  /** What begins a question or an order. */
  private static final String OPENING =
      "(?:(?:could|can|would|will) you (?:please |kindly )?|please |kindly |just"
          + " )?(?:show|list|give|find|tell me|let me see|pull up|dig out|what|which|how"
          + " many|where|when|who|on which|in which|with which|have we|have i|do we|do i|did we|did"
          + " i|is there|are there|was there|were there|any )\\b";

  private static final Pattern PLAINLY =
      Pattern.compile("(?:,? (?:and )?so,? |: )(?=" + OPENING + ")", Pattern.CASE_INSENSITIVE);
  private static final Pattern COMMA =
      Pattern.compile("[,.;] (?:and |but |now )?(?=" + OPENING + ")", Pattern.CASE_INSENSITIVE);

  /** A sentence has somebody in it, or something that is or does. */
  private static final Pattern SENTENCE =
      Pattern.compile(
          "\\b(?:i|i'm|i've|i'd|we|we're|we've|he|she|they|they've|they're|it|me|my|our|us|somebody"
              + "|someone|you|is|are|was|were|has|had|says|said|told)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final int FEWEST_WORDS = 4;

  /** The last such part of a text that has a sentence before it. */
  static Optional<Preamble> of(String text) {
    return split(text, PLAINLY, true).or(() -> split(text, COMMA, false));
  }

  private static Optional<Preamble> split(String text, Pattern between, boolean plainly) {
    Optional<Preamble> last = Optional.empty();
    Matcher places = between.matcher(text);
    while (places.find()) {
      String told = text.substring(0, places.start());
      if (told.split("\\s+").length >= FEWEST_WORDS
          && SENTENCE.matcher(told).find()
          && told.indexOf('"') < 0) {
        last = Optional.of(new Preamble(told, text.substring(places.end()), plainly));
      }
    }
    return last;
  }
}
