package charline.log.search;

import charline.log.PatchEntry;
import charline.trial.Knob;
import charline.trial.Reading;
import charline.trial.Tone;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/** What of a patch is a word or a name. */
public enum Attribute {
  FAMILY(e -> Stream.of(e.patch().finish().family())),
  WOOD(e -> Stream.of(e.patch().board().wood())),
  RIG(e -> Stream.of(e.patch().rig().name())),
  BOARD(e -> Stream.of(e.patch().board().name())),
  FINISH(e -> Stream.of(e.patch().finish().name())),
  JOB(e -> e.patch().board().job().stream()),
  BURNED_BY(e -> e.by().stream()),
  JUDGED_BY(e -> e.patch().readings().stream().map(Reading::by).flatMap(Optional::stream)),
  /** Who burned it or judged it. */
  PERSON(e -> Stream.concat(BURNED_BY.of(e), JUDGED_BY.of(e))),
  TONE(e -> e.patch().finish().tone().map(Tone::word).stream()),
  FORM(e -> Stream.of(e.patch().board().form().word())),
  CONDITION(e -> e.patch().board().condition().stream()),
  LIGHT(e -> Stream.of(e.patch().rig().emission().word())),
  FIGURE(e -> circumstance(e, Knob.FIGURE)),
  PLACE(e -> circumstance(e, Knob.PLACE)),
  WOOD_PART(e -> circumstance(e, Knob.WOOD_PART));

  private final Function<PatchEntry, Stream<String>> values;

  Attribute(Function<PatchEntry, Stream<String>> values) {
    this.values = values;
  }

  /** Its words of one patch; none where it is not known. */
  Stream<String> of(PatchEntry entry) {
    return values.apply(entry);
  }

  private static Stream<String> circumstance(PatchEntry entry, Knob knob) {
    return Stream.ofNullable((String) entry.patch().circumstances().values().get(knob));
  }
}
