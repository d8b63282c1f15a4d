package charline.ask;

import charline.ask.Piece.Denial;
import charline.ask.Piece.Effort;
import charline.ask.Piece.Fact;
import charline.ask.Piece.Joint;
import charline.ask.Piece.Lie;
import charline.ask.Piece.Passes;
import charline.ask.Piece.Sight;
import charline.ask.Question.Purpose;
import charline.ask.time.Counting;
import charline.log.search.Amount;
import charline.log.search.Attribute;
import charline.log.search.Condition;
import charline.log.search.Condition.Has;
import charline.log.search.Condition.Marks;
import charline.log.search.Condition.Measured;
import charline.log.search.Condition.Noted;
import charline.log.search.Feature;
import charline.log.search.NumberRange;
import charline.refusal.Refusal;
import charline.trial.Mark;
import charline.trial.WoodFacts;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Reads words that mean something in every log. */
final class PlainWords {
  private static final int SEVERAL = 5;

  private static final Set<String> PAINTS =
      Set.of("latex", "alkyd", "milk paint", "metal-flake paint");

  private static final Set<String> HELPING =
      Set.of(
          "did",
          "does",
          "do",
          "not",
          "never",
          "to",
          "will",
          "would",
          "could",
          "can",
          "that",
          "which",
          "who",
          "it",
          "all",
          "fully",
          "completely",
          "always",
          "they",
          "must",
          "should",
          "this",
          "these",
          "really",
          "properly",
          "ever",
          "actually",
          "what");

  private static final Set<String> VAGUE =
      Set.of("low", "high", "little", "small", "big", "large", "strong", "weak", "slow", "fast");

  private static final Set<String> THINKING =
      Set.of(
          "know",
          "remember",
          "recall",
          "sure",
          "certain",
          "understand",
          "forget",
          "mind",
          "matter",
          "care",
          "only",
          "just",
          "clear about");

  private static final Set<String> DEGREES =
      Set.of(
          "hot", "cold", "fast", "slow", "deep", "high", "low", "hard", "strong", "long", "thick",
          "far", "big", "well", "good", "bad", "much", "clean", "wet", "close");

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

  private static final Set<String> PEOPLE =
      Set.of(
          "i",
          "we",
          "you",
          "they",
          "he",
          "she",
          "who",
          "whoever",
          "someone",
          "somebody",
          "anyone",
          "anybody",
          "nobody",
          "everybody");

  private static final Set<String> SPEAKING =
      Set.of(
          "note",
          "noted",
          "write",
          "wrote",
          "mention",
          "mentioned",
          "say",
          "said",
          "remark",
          "comment",
          "call",
          "called",
          "want",
          "need",
          "see",
          "mean",
          "meant",
          "like",
          "liked");

  private final QuestionReader reader;
  private final Superlatives superlatives;

  PlainWords(QuestionReader reader) {
    this.reader = reader;
    superlatives = new Superlatives(reader);
  }

  /** Words of the longest phrase with a meaning from a word on. */
  int lengthOfPhrase(int at) {
    for (int length = Math.min(Sense.longest(), reader.size() - at); length > 0; length--) {
      if (Sense.of(reader.phrase(at, length)).isPresent()) {
        return length;
      }
    }
    return 0;
  }

  /** Takes a phrase in; gives how many words it was, 0 where it means nothing here. */
  int read(int at) {
    int alone = alone(at);
    if (alone > 0) {
      return alone;
    }
    if (reader.word(at - 1).equals("how") && DEGREES.contains(reader.word(at))) {
      return 1; // "how hot can I go" asks to see doses
    }
    int person = pronoun(at);
    if (person > 0) {
      return person;
    }
    if (VAGUE.contains(reader.word(at))
        && reader.fieldAt(at + 1).isPresent()
        && reader.isNumber(at + 1)) {
      return 1; // "a low power under 30 %"
    }
    for (int length = Math.min(Sense.longest(), reader.size() - at); length > 0; length--) {
      Optional<Sense> sense = Sense.of(reader.phrase(at, length));
      if (sense.isPresent()) {
        int taken = take(sense.get(), at, length);
        if (taken > 0) {
          return taken;
        }
      }
    }
    return mark(at);
  }

  /** "Tint only": no other mark. */
  private int alone(int at) {
    Optional<Mark> mark =
        Arrays.stream(Mark.values())
            .filter(m -> m != Mark.CLEAN)
            .filter(m -> m.word().equals(reader.word(at)) || m.others().contains(reader.word(at)))
            .findFirst();
    if (mark.isEmpty() || !Set.of("only", "alone").contains(reader.word(at + 1))) {
      return 0;
    }
    EnumSet<Mark> others = EnumSet.complementOf(EnumSet.of(mark.get()));
    reader.add(new Sight(new Marks(Set.of(mark.get()), others)));
    return 2;
  }

  /** Whether a word means an outcome. */
  static boolean isOutcome(String word) {
    return Sense.of(word).filter(s -> s.ordinal() <= Sense.UNCLEARED.ordinal()).isPresent();
  }

  /** Words for marks that the marks themselves know. */
  private int mark(int at) {
    for (Mark mark : Mark.values()) {
      if (mark.word().equals(reader.word(at)) || mark.others().contains(reader.word(at))) {
        reader.add(new Sight(Marks.of(mark)));
        return 1;
      }
    }
    return 0;
  }

  private int take(Sense sense, int at, int length) {
    switch (sense) {
      case AND -> reader.add(Joint.AND);
      case OR -> reader.add(Joint.OR);
      case NOT -> {
        return denied(at, length);
      }
      case NEVER -> reader.add(Denial.NEVER);
      case EXCEPT -> reader.add(Denial.EXCEPT);
      case BUT -> reader.add(Joint.AND);
      case MINE -> reader.addAsker(judgingFollows(at), reader.word(at));
      case BY -> {
        return by(at, length);
      }
      case JUDGED -> {
        return judged(at, length);
      }
      default -> {
        return seen(sense, at, length);
      }
    }
    return length;
  }

  // what was seen

  private int seen(Sense sense, int at, int length) {
    switch (sense) {
      case CLEAN -> {
        return clean(at, length);
      }
      case CLEARED, UNCLEARED -> {
        if (sense == Sense.UNCLEARED) {
          reader.add(Denial.NOT);
        }
        cleared();
      }
      case CLEAR -> {
        return clear(at);
      }
      case CHARRED -> reader.add(new Sight(Marks.of(Mark.CHAR)));
      case BURN -> {
        return burned(at);
      }
      case TINTED -> reader.add(new Sight(Marks.of(Mark.TINT)));
      case RESIDUE -> reader.add(new Sight(Marks.of(Mark.RESIDUE)));
      case FAILED -> {
        reader.remark("Failed is read as not clean.");
        reader.add(new Sight(Marks.NOT_CLEAN));
      }
      case SAFE -> {
        reader.remark("Safe is read as not charred, which is less than a window promises.");
        reader.add(new Sight(Marks.NOT_CHARRED));
      }
      default -> {
        return stacked(sense, at, length);
      }
    }
    return length;
  }

  private void cleared() {
    reader.remark(
        "Cleared is read as no residue and no tint left, whether the wood is charred or not.");
    reader.add(new Sight(Marks.CLEARED));
  }

  /** "We worked on oak" says nothing of how it came out, "it worked on oak" does. */
  private int clean(int at, int length) {
    String word = reader.word(at);
    boolean people = Set.of("i", "we", "you", "they", "he", "she").contains(reader.word(at - 1));
    if (word.startsWith("work") && people
        || word.equals("work")
            && !HELPING.contains(reader.word(at - 1))
            && !Filler.isSeveral(reader.word(at - 1))
            && !Set.of("is", "are").contains(reader.word(at - 1))) {
      return 0;
    }
    if (Set.of("well", "right", "fine", "good").contains(word)
        && reader.word(at + 1).equals("now")) {
      return 0;
    }
    if (!word.equals("clean")
        && !word.startsWith("clean")
        && !word.startsWith("work")
        && length == 1) {
      reader.remark("\"%s\" is read as clean.".formatted(reader.whole(at).typed()));
    }
    reader.add(new Sight(Marks.of(Mark.CLEAN)));
    return length;
  }

  /** An outcome where something clears, else the coat. */
  private int clear(int at) {
    boolean anotherCoat = false;
    for (int i = 0; i < reader.size(); i++) {
      anotherCoat |= i != at && reader.isOf(Attribute.FAMILY, i);
    }
    String before = reader.word(at - 1);
    boolean verb =
        HELPING.contains(before)
            || Filler.isPatches(before)
            || anotherCoat && !Set.of("over", "under", "on", "or", "and").contains(before)
            || reader.isOf(Attribute.FAMILY, at - 1)
            || Sense.of(before).filter(s -> s == Sense.NOT || s == Sense.NEVER).isPresent();
    if (Set.of("over", "under", "underneath").contains(reader.word(at + 1))) {
      verb = HELPING.contains(before) || reader.isOf(Attribute.FAMILY, at - 1);
    }
    for (int i = 0; i < at; i++) {
      verb |= Set.of("did", "does", "do", "didn't").contains(reader.word(i));
    }
    if (!verb) {
      reader.remark("\"clear\" is read as the clear coat; say cleared for the outcome.");
      return 0;
    }
    reader.remark("\"clear\" is read as the outcome; say clear coat for the coat.");
    cleared();
    return 1;
  }

  /**
   * True for "burned" in "patches burned on oak", "burned by Ada" and "what did we burn", which
   * every patch was; elsewhere it is char.
   */
  private int burned(int at) {
    boolean patches =
        at > 0
            && Filler.isPatches(reader.word(at - 1))
            && !Set.of("ones", "one").contains(reader.word(at - 1));
    boolean person =
        at > 0
            && (PEOPLE.contains(reader.word(at - 1))
                || reader.pieces().size() > 0
                    && reader.pieces().get(reader.pieces().size() - 1) instanceof Fact fact
                    && Set.of(Attribute.PERSON, Attribute.BURNED_BY).contains(fact.group()));
    String next = reader.word(at + 1);
    boolean itself =
        Set.of("what", "which", "that", "it", "wood", "result", "outcome", "nothing", "something")
            .contains(reader.word(at - 1));
    boolean how =
        reader.word(at).equals("burned")
            && !itself
            && (Set.of("by", "with", "using", "under", "at", "since", "from").contains(next)
                || reader.timeAt(at + 1));
    if (patches && !itself || person || how) {
      return 1;
    }
    reader.add(new Sight(Marks.of(Mark.CHAR)));
    return 1;
  }

  /** "No residue", "char free", "not that I know". */
  private int denied(int at, int length) {
    boolean last =
        at + length == reader.size()
            || reader.whole(at + length).comma()
            || Set.of("and", "or", "but").contains(reader.word(at + length));
    if (reader.word(at).equals("no") && last && reader.denyLast()) {
      return length; // "wetted: no"
    }
    boolean rhetorical =
        Set.of(
                    "did", "do", "does", "have", "has", "had", "is", "are", "was", "were", "can",
                    "could")
                .contains(reader.word(at - 1))
            && Set.of("we", "i", "you", "they", "he", "she", "there", "it", "anyone", "anybody")
                .contains(reader.word(at + 1));
    int mind = at + length;
    while (Set.of("really", "quite", "yet", "so", "be", "too").contains(reader.word(mind))) {
      mind++;
    }
    boolean thinking = THINKING.contains(reader.word(mind));
    boolean whether =
        reader.word(at - 1).equals("or")
            && reader.word(at).equals("not")
            && !isOutcome(reader.word(at + 1));
    if (rhetorical || thinking || whether) {
      return length; // "didn't we try oak" asks for oak
    }
    requireDeniable(at, length);
    reader.add(Denial.NOT);
    return length;
  }

  /** What is denied must be known: "without luck on pine" must not deny the pine. */
  private void requireDeniable(int at, int length) {
    int next = at + length;
    while (Set.of("a", "an", "the", "any", "much", "more", "yet", "ever", "even")
        .contains(reader.word(next))) {
      next++;
    }
    String what = reader.word(next);
    if (Set.of("tried", "tested", "try", "test").contains(what)) {
      throw Refusal.usage(
          "The log knows what was burned, not what was not %s; ask for what was.".formatted(what));
    }
    if (Filler.isThing(what) && reader.fieldAt(next).isEmpty() && !reader.isPhrase(next)) {
      throw Refusal.usage(
          "I do not know what \"%s %s\" says of a patch; deny an outcome, a coating, a wood or a name."
              .formatted(reader.whole(at).typed(), reader.whole(next).typed()));
    }
  }

  // coats

  private int stacked(Sense sense, int at, int length) {
    switch (sense) {
      case OVER -> reader.addLie(COATS.contains(reader.word(at - 1)) ? Lie.OVER_ALL : Lie.OVER);
      case ON -> {
        reader.addLie(Lie.ON);
      }
      case UNDER -> reader.addLie(Lie.UNDER);
      case INSIDE -> reader.addLie(Lie.INSIDE);
      case TOP -> reader.addLie(Lie.TOP);
      case WITH -> {
        if (reader.coatFollows(at + 1)) {
          reader.addLie(Lie.WITH);
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
        return noted(sense, at, length);
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

  // people

  /** "I" where something was done: "what did I try", "patches I burned". */
  private int pronoun(int at) {
    String word = reader.word(at);
    if (!word.equals("i")) {
      return 0;
    }
    int next = at + 1;
    while (Set.of(
            "ever",
            "already",
            "last",
            "just",
            "recently",
            "also",
            "never",
            "only",
            "not",
            "actually",
            "really")
        .contains(reader.word(next))) {
      next++;
    }
    String verb = reader.word(next);
    String before = reader.word(at - 1);
    boolean asked =
        Set.of("did", "have", "had").contains(before)
            && !verb.equals("got")
            && !verb.equals("any")
            && (Filler.isDone(verb) || before.equals("did") || before.equals("had"));
    boolean told = Filler.isDone(verb) && !Set.of("need", "got").contains(verb);
    boolean perfect =
        Set.of("have", "had").contains(verb)
            && Filler.isDone(reader.word(next + 1))
            && !reader.word(next + 1).equals("got");
    boolean speaking =
        SPEAKING.contains(verb) || SPEAKING.contains(reader.word(next + 1)) && perfect;
    if ((asked || told || perfect) && !speaking) {
      boolean judges =
          Sense.of(verb).filter(s -> s == Sense.JUDGED).isPresent()
              || Sense.of(reader.word(next + 1)).filter(s -> s == Sense.JUDGED).isPresent();
      reader.addAsker(judges ? Attribute.JUDGED_BY : Attribute.BURNED_BY, "I");
    }
    return 1;
  }

  private Attribute judgingFollows(int at) {
    return Set.of("readings", "judgements", "judgments").contains(reader.word(at + 1))
        ? Attribute.JUDGED_BY
        : Attribute.BURNED_BY;
  }

  private int by(int at, int length) {
    int who = at + length;
    Attribute attribute =
        Set.of("judged", "read", "assessed", "graded", "inspected", "evaluated", "reviewed")
                .contains(reader.word(at - 1))
            ? Attribute.JUDGED_BY
            : Set.of("burned", "burnt", "fired", "shot", "made", "done", "lasered", "recorded")
                    .contains(reader.word(at - 1))
                ? Attribute.BURNED_BY
                : Attribute.PERSON;
    if (Set.of("me", "myself").contains(reader.word(who))) {
      reader.addAsker(attribute, reader.word(who));
      return length + 1;
    }
    if (Set.of("us", "anyone", "anybody", "everyone", "everybody", "all", "whom", "who", "hand")
        .contains(reader.word(who))) {
      return length;
    }
    int person = reader.person(who, attribute);
    while (person > 0
        && (reader.word(who + person).equals("or") || reader.word(who + person).equals("and"))
        && reader.isPerson(who + person + 1)) {
      reader.add(Joint.OR);
      person += 1 + reader.person(who + person + 1, attribute);
    }
    if (person > 0) {
      return length + person;
    }
    if (Filler.is(reader.word(who)) || reader.word(who).isEmpty()) {
      return length;
    }
    Set<String> people = reader.vocabulary().people();
    throw Refusal.usage(
        people.isEmpty()
            ? "Nobody burned or judged a patch by name yet, so \"by %s\" finds none."
                .formatted(reader.whole(who).typed())
            : "I do not know \"%s\" after \"by\"; people in this log: %s."
                .formatted(reader.whole(who).typed(), String.join(", ", people)));
  }

  /** "Judged by Bo" and "judged yesterday" are about readings. */
  private int judged(int at, int length) {
    boolean noun = reader.word(at).equals("read") || reader.word(at).startsWith("look");
    return noun || !reader.isPerson(at + length)
        ? length
        : length + reader.person(at + length, Attribute.JUDGED_BY);
  }

  // what is noted

  private int noted(Sense sense, int at, int length) {
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
      case NOTE -> {
        return note(at, length);
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
        return wooden(sense, at, length);
      }
    }
    return length;
  }

  /** "Note patchy", "notes that mention the hinge", "with a note". */
  private int note(int at, int length) {
    int next = at + length;
    boolean mentioned = reader.word(at).startsWith("mention");
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
            && !reader.isOf(Attribute.WOOD, next);
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

  // wood and board

  private int wooden(Sense sense, int at, int length) {
    switch (sense) {
      case FACE -> reader.addPlain(Attribute.PLACE, "face");
      case ARRIS -> reader.addPlain(Attribute.PLACE, "arris");
      case END_GRAIN -> reader.addPlain(Attribute.PLACE, "end grain");
      case MOULDING -> reader.addPlain(Attribute.PLACE, "moulding");
      case KNOT -> reader.addPlain(Attribute.PLACE, "knot");
      case SAP -> reader.addPlain(Attribute.WOOD_PART, "sap");
      case HEART -> reader.addPlain(Attribute.WOOD_PART, "heart");
      case SOLID -> reader.addPlain(Attribute.FORM, "solid");
      case VENEER -> reader.addPlain(Attribute.FORM, "veneer");
      case HARDWOOD -> woods(w -> w.kind().equals("hardwood"), "a hardwood");
      case SOFTWOOD -> woods(w -> w.kind().equals("softwood"), "a softwood");
      case PANEL -> {
        if (reader.isOf(Attribute.WOOD, at - 1)) {
          return length; // an oak panel is of oak
        }
        woods(w -> w.kind().equals("panel"), "a panel");
      }
      case RING_POROUS -> woods(w -> w.pores().equals("ring"), "a ring-porous wood");
      case SEMI_RING -> woods(w -> w.pores().equals("semi-ring"), "a semi-ring-porous wood");
      case DIFFUSE -> woods(w -> w.pores().equals("diffuse"), "a diffuse-porous wood");
      case RESINOUS ->
          woods(w -> Set.of("many", "yes").contains(w.resin()), "a wood with resin canals");
      case PALE -> reader.addPlain(Attribute.TONE, "pale");
      case MID -> reader.addPlain(Attribute.TONE, "mid");
      case DARK -> reader.addPlain(Attribute.TONE, "dark");
      default -> {
        return amount(sense, at, length);
      }
    }
    return length;
  }

  private void woods(Predicate<WoodFacts> kind, String said) {
    reader.addWoods(
        reader.vocabulary().woods().stream()
            .filter(kind)
            .map(WoodFacts::name)
            .collect(Collectors.toSet()),
        said);
  }

  // numbers and order

  private int amount(Sense sense, int at, int length) {
    switch (sense) {
      case BY_HAND -> known(Amount.HAND);
      case SCANNED -> known(Amount.SCAN);
      case TIMED -> known(Amount.SECONDS);
      case MEASURED_DEPTH -> {
        if (reader.isNumber(at + length - 1) || reader.isNumber(at + length - 2)) {
          return 0;
        }
        known(Amount.DEPTH);
      }
      case ONE_PASS -> {
        reader.remark("\"%s\" is read as after 1 pass.".formatted(reader.phrase(at, length)));
        reader.add(new Passes(NumberRange.exactly(1), false));
      }
      case TWICE -> {
        reader.remark("\"twice\" is read as after 2 passes.");
        reader.add(new Passes(NumberRange.exactly(2), false));
      }
      case TOOK -> reader.add(Effort.TOOK);
      case HALF_POWER -> power(50);
      case FULL_POWER -> power(100);
      case COUNT -> {
        return count(at, length);
      }
      case BEST -> {
        reader.wish().purpose = Purpose.BEST;
      }
      case ENDING_OFF -> {
        return off(at);
      }
      case BARE -> {
        return 0;
      }
      default -> {
        return superlatives.read(sense, at, length);
      }
    }
    return length;
  }

  /** "It came off", "did we get it off"; elsewhere it is plain speech. */
  private int off(int at) {
    boolean asked = false;
    for (int i = 0; i < at; i++) {
      asked |=
          Set.of("did", "does", "do", "not", "never", "has", "manage").contains(reader.word(i));
    }
    for (int i = Math.max(0, at - 6); i < at; i++) {
      String verb = reader.word(i);
      if (Set.of("came", "comes", "got", "took", "fell").contains(verb)
          || asked && Set.of("come", "get", "take", "fall").contains(verb)) {
        cleared();
        return 1;
      }
    }
    return 0;
  }

  private void known(Amount amount) {
    reader.add(new Fact(new Measured(amount, NumberRange.ANY), amount, false));
  }

  private void power(double percent) {
    reader.add(
        new Fact(
            new Measured(Amount.POWER_PCT, NumberRange.exactly(percent)), Amount.POWER_PCT, true));
  }

  /** "How many passes" asks for passes, not for the number of patches. */
  private int count(int at, int length) {
    Optional<Map.Entry<Integer, Amount>> field = reader.fieldAt(at + length);
    if (field.isEmpty()) {
      reader.wish().purpose = Purpose.COUNT;
    }
    return length;
  }

  /** Several where the head word is in the plural, else one. */
  static int usually(String word) {
    return Filler.isSeveral(word) ? SEVERAL : 1;
  }

  static OptionalInt counted(String word) {
    return word.matches("0+") ? OptionalInt.empty() : Counting.of(word);
  }
}
