package charline.cli.trials;

import static charline.quantity.Figures.plain;

import charline.answer.Applicability;
import charline.answer.TrialQuestion;
import charline.quantity.Figures;
import charline.trial.Knob;
import charline.trial.Stratum;
import charline.wording.FaceHints;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The commands and options that do what an answer suggests. */
final class CommandHints implements FaceHints {
  static final FaceHints HINTS = new CommandHints();

  private static final List<Knob> KNOBS =
      List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.WIDTH, Knob.HAND, Knob.SPACING, Knob.SCAN);

  private CommandHints() {}

  @Override
  public Optional<String> borrow() {
    return Optional.of("Add --borrow to use them as a prior.");
  }

  @Override
  public Optional<String> pool(List<String> woods) {
    return Optional.of(
        "Pool %s with %s.".formatted(woods.size() == 1 ? "it" : "them", options(woods)));
  }

  @Override
  public Optional<String> tryOut(Applicability answer) {
    TrialQuestion question = answer.subject().question();
    Stratum stratum = answer.subject().trials().stratum();
    List<String> woods = stratum.woods();
    StringBuilder command =
        new StringBuilder(
            "charline next %s %s"
                .formatted(
                    quoted(stratum.family()),
                    woods.isEmpty() ? Stratum.ANY_WOOD : quoted(woods.get(0))));
    if (woods.size() > 1) {
      command.append(' ').append(options(woods.subList(1, woods.size())));
    }
    question.piece().ifPresent(piece -> command.append(" --piece ").append(quoted(piece)));
    question.rig().ifPresent(rig -> command.append(" --rig ").append(quoted(rig)));
    Map<Knob, Double> fixed = question.fixed().values();
    if (!fixed.isEmpty()) {
      command
          .append(" --at ")
          .append(
              KNOBS.stream()
                  .filter(fixed::containsKey)
                  .map(knob -> knob.key() + "=" + Figures.shortest(fixed.get(knob)))
                  .collect(Collectors.joining(",")));
    }
    return Optional.of("List the patches with `%s`.".formatted(command));
  }

  @Override
  public Optional<String> forPiece() {
    return Optional.of(
        "Record them on a board of the piece's own, and ask with --piece BOARD: they confirm the"
            + " window for it.");
  }

  @Override
  public Optional<String> forSpot(double millimetres) {
    return Optional.of("Ask with --at spot=%smm.".formatted(plain(millimetres)));
  }

  private static String options(List<String> woods) {
    return woods.stream()
        .map(wood -> "--with-wood " + quoted(wood))
        .collect(Collectors.joining(" "));
  }

  private static String quoted(String word) {
    return word.contains(" ") ? '"' + word + '"' : word;
  }
}
