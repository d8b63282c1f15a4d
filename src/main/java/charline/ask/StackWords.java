package charline.ask;

import charline.ask.Piece.Lie;
import java.util.Set;

/** Reads how coats lie: over, under, with, in it. */
final class StackWords {
  private static final Set<String> PAINTS =
      Set.of("latex", "alkyd", "milk paint", "metal-flake paint");

  private static final Set<String> COATS =
      Set.of(
          "coat",
          "coats",
          "coating",
          "coatings",
          "finish",
          "finishes",
          "layer",
          "layers",
          "anything",
          "something",
          "everything",
          "whatever",
          "what",
          "stuff",
          "paint",
          "paints");

  private final QuestionReader reader;

  StackWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Takes a phrase in; gives how many words it was, or {@link PlainWords#OTHER}. */
  int read(Sense sense, int at, int length) {
    switch (sense) {
      case OVER -> {
        boolean named =
            !reader.pieces().isEmpty()
                && reader.pieces().get(reader.pieces().size() - 1) instanceof Piece.Coating;
        boolean any = !named && COATS.contains(reader.word(at - 1));
        reader.add(any ? Lie.OVER_ALL : Lie.OVER);
      }
      case ON -> {
        reader.add(Lie.ON);
      }
      case UNDER -> reader.add(Lie.UNDER);
      case INSIDE -> reader.add(Lie.INSIDE);
      case TOP -> reader.add(Lie.TOP);
      case WITH -> {
        if (reader.coatFollows(at + 1)) {
          reader.add(Lie.WITH);
        }
        // "have I tried" and "with the heron" are plain speech
        return length;
      }
      case PAINT -> {
        if (isAnyFinish(at)) {
          reader.remark("The paint is read as any finish; name latex, alkyd or milk paint.");
          return length;
        }
        reader.remark("Paint is read as latex, alkyd, milk paint or metal-flake paint.");
        reader.add(new Piece.Coating(PAINTS, "paint"));
      }
      case PRIMED -> reader.add(new Piece.Coating(Set.of("primer"), "primer"));
      default -> {
        return PlainWords.OTHER;
      }
    }
    return length;
  }

  /** "The paint came off" is about whatever finish there was. */
  private boolean isAnyFinish(int at) {
    return reader.word(at).equals("paint")
        && (Set.of("the", "where", "all", "when", "old").contains(reader.word(at - 1))
            || Set.of(
                    "is", "was", "are", "came", "come", "comes", "off", "did", "does", "has",
                    "stays", "stayed", "still", "not")
                .contains(reader.word(at + 1)))
        && !Set.of("on", "over").contains(reader.word(at + 1));
  }
}
