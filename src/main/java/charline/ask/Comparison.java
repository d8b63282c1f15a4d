package charline.ask;

import java.util.Map;

/** How a number is compared, and the words for it before and after the number. */
enum Comparison {
  OVER,
  AT_LEAST,
  UNDER,
  AT_MOST,
  EXACTLY,
  ABOUT;

  static final Map<String, Comparison> LEADING =
      AmountWords.table(
          Map.of(
              Comparison.OVER,
              "more than, over, above, greater than, higher than, bigger than, larger than,"
                  + " exceeding, beyond, >, longer than, better than, in excess of, stronger than,"
                  + " hotter than, upwards than, not only, bigger then, more then, higher then,"
                  + " superior to",
              Comparison.AT_LEAST,
              "at least, at or above, at or over, equal or above, equal or over, equal or more"
                  + " than, no less than, not less than, minimum, min, >=, =>, no fewer than, not"
                  + " fewer than, not under, not below, upwards of, starting at, minimum of, a"
                  + " minimum of, from at least, no lower than, not lower than",
              Comparison.UNDER,
              "less than, under, below, fewer than, lower than, smaller than, <, shorter than,"
                  + " beneath, less then, lower then, fewer then, short of, inside of,"
                  + " inferior to",
              Comparison.AT_MOST,
              "at most, at or below, at or under, equal or below, equal or under, equal or less"
                  + " than, no more than, not more than, up to, maximum, max, <=, =<, not over, not"
                  + " above, no higher than, not exceeding, maximum of, a maximum of, at the most,"
                  + " within, not higher than, no greater than",
              Comparison.EXACTLY,
              "exactly, equal to, equals, =, ==, precisely",
              Comparison.ABOUT,
              "about, around, roughly, approximately, approx, near, ca, circa, ~, close to,"
                  + " something like, some, nearly, almost"));

  static final Map<String, Comparison> TRAILING =
      AmountWords.table(
          Map.of(
              Comparison.AT_LEAST,
              "or more, or higher, or above, or over, or up, or greater, or faster, or hotter, or"
                  + " longer, or deeper, or stronger, or better, and more, and above, and up, and"
                  + " over, and higher, and faster, upwards, minimum, plus, at least, or bigger, or"
                  + " thicker, and upwards, or wider, or later, and later, onwards, onward",
              Comparison.AT_MOST,
              "or less, or fewer, or lower, or below, or under, or slower, or down, or cooler, and"
                  + " less, and below, and under, and lower, and slower, max, maximum, tops, at"
                  + " most, or smaller, and fewer, or thinner, or shallower, or weaker, and down,"
                  + " or shorter, or earlier, and earlier, or sooner"));
}
