package charline.ask;

import charline.ask.Piece.Joint;
import charline.log.search.Attribute;
import charline.refusal.Refusal;
import java.util.Set;

/** Reads who burned and judged: I, my, by Ada. */
final class PeopleWords {
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

  PeopleWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** "I" where something was done: "what did I try", "patches I burned". */
  int pronoun(int at) {
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
      reader.names().addAsker(judges ? Attribute.JUDGED_BY : Attribute.BURNED_BY, "I");
    }
    return 1;
  }

  Attribute judgingFollows(int at) {
    return Set.of("readings", "judgements", "judgments").contains(reader.word(at + 1))
        ? Attribute.JUDGED_BY
        : Attribute.BURNED_BY;
  }

  int by(int at, int length) {
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
      reader.names().addAsker(attribute, reader.word(who));
      return length + 1;
    }
    if (Set.of("us", "anyone", "anybody", "everyone", "everybody", "all", "whom", "who", "hand")
        .contains(reader.word(who))) {
      return length;
    }
    int person = reader.names().person(who, attribute);
    while (person > 0
        && (reader.word(who + person).equals("or") || reader.word(who + person).equals("and"))
        && reader.names().isPerson(who + person + 1)) {
      reader.add(Joint.OR);
      person += 1 + reader.names().person(who + person + 1, attribute);
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
  int judged(int at, int length) {
    if (reader.word(at + length).equals("from") && reader.names().isPerson(at + length + 1)) {
      return length + 1 + reader.names().person(at + length + 1, Attribute.JUDGED_BY);
    }
    boolean noun = reader.word(at).equals("read") || reader.word(at).startsWith("look");
    return noun || !reader.names().isPerson(at + length)
        ? length
        : length + reader.names().person(at + length, Attribute.JUDGED_BY);
  }
}
