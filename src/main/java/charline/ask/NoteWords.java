package charline.ask;

import charline.ask.Piece.Fact;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Noted;
import charline.log.search.Feature;
import java.util.List;
import java.util.Set;

/** Reads what is noted of a patch: soot, photos, notes, air, the kind of light. */
final class NoteWords {
  private final QuestionReader reader;

  NoteWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Takes a phrase in; gives how many words it was, or {@link PlainWords#OTHER}. */
  int read(Sense sense, int at, int length) {
    switch (sense) {
      case SOOT -> reader.add(new Fact(new Has(Feature.SOOT), Feature.SOOT, false));
      case PHOTO -> reader.add(new Fact(new Has(Feature.PHOTO), Feature.PHOTO, false));
      case PLANNED -> {
        reader.remark(
            "Planned is read as burned under a planned code; plans that are open are no patches"
                + " yet.");
        reader.add(new Fact(new Has(Feature.PLANNED), Feature.PLANNED, false));
      }
      case VOID -> reader.add(new Fact(new Has(Feature.VOID), Feature.VOID, false));
      case COUNTING_ALL ->
          reader.add(
              new Fact(
                  Condition.either(
                      List.of(new Has(Feature.VOID), new Condition.Not(new Has(Feature.VOID)))),
                  "including void",
                  false));
      case NOTE, WRITING -> {
        return note(at, length);
      }
      case IDLE -> {
        return length;
      }
      case NOTHING_BUT -> {
        return length; // what comes next is read as the only mark
      }
      case FREE -> {
        return reader.denyLast() ? length : 0;
      }
      case MENTIONING -> {
        return reader.word(at).startsWith("mention") ? note(at, length) : 0;
      }
      case WETTED -> reader.add(new Fact(new Has(Feature.WETTED), Feature.WETTED, false));
      case DRY -> {
        reader.remark("Dry is read as not wetted.");
        reader.addFeature(Feature.WETTED, false);
      }
      case AIR, EXTRACTION -> {
        Feature feature = sense == Sense.AIR ? Feature.AIR : Feature.EXTRACTION;
        boolean off = reader.word(at + length).equals("off");
        reader.addFeature(feature, !off);
        return off ? length + 1 : length;
      }
      case PULSED -> reader.addPlain(Attribute.LIGHT, "pulsed");
      case CW -> reader.addPlain(Attribute.LIGHT, "cw");
      default -> {
        return PlainWords.OTHER;
      }
    }
    return length;
  }

  /** "Note patchy", "notes that mention the hinge", "with a note". */
  private int note(int at, int length) {
    int next = at + length;
    boolean written = Sense.WRITING.has(reader.phrase(at, length));
    boolean mentioned = written || reader.word(at).startsWith("mention");
    while (written && Set.of("it", "they", "he", "she", "this").contains(reader.word(next))) {
      next++;
    }
    while (Sense.MENTIONING.has(reader.word(next))
        || Set.of("that", "which", "the", "a", "an").contains(reader.word(next))) {
      mentioned |=
          !Set.of("that", "which", "the", "a", "an", "is", "was").contains(reader.word(next));
      next++;
    }
    if (next < reader.size() && reader.whole(next).quoted()) {
      reader.add(new Fact(new Noted(reader.whole(next).typed()), "note", false));
      return next + 1 - at;
    }
    for (int words = Math.min(5, reader.size() - next); words > 0; words--) {
      String text = reader.phrase(next, words);
      if (!text.isEmpty()
          && text.length() > 2
          && (mentioned || !Filler.is(text))
          && Sense.of(text).filter(s -> s == Sense.AND || s == Sense.OR).isEmpty()
          && reader.vocabulary().inNotes(text)) {
        reader.add(new Fact(new Noted(text), "note", false));
        return next + words - at;
      }
    }
    boolean word =
        mentioned
            && !reader.word(next).isEmpty()
            && !reader.timeAt(next)
            && !reader.names().isOf(Attribute.WOOD, next);
    if (word) {
      reader.add(new Fact(new Noted(reader.word(next)), "note", false));
      return next + 1 - at;
    }
    if (reader.word(at).endsWith("ed")) {
      return 0; // "where soot was noted"
    }
    reader.add(new Fact(new Has(Feature.NOTE), Feature.NOTE, false));
    return length;
  }
}
