package charline.ask;

import charline.log.search.Attribute;
import charline.trial.WoodFacts;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Reads what a patch lies on: places, forms, classes of wood, tones of the coat. */
final class WoodWords {
  private final QuestionReader reader;

  WoodWords(QuestionReader reader) {
    this.reader = reader;
  }

  /** Takes a phrase in; gives how many words it was, or {@link PlainWords#OTHER}. */
  int read(Sense sense, int at, int length) {
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
        if (reader.names().isOf(Attribute.WOOD, at - 1)) {
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
        return PlainWords.OTHER;
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
}
