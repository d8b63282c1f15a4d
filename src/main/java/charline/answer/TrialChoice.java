package charline.answer;

import charline.exposure.Pulses;
import charline.log.Logbook;
import charline.model.Trials;
import charline.model.way.Way;
import charline.quantity.Figures;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Patch;
import charline.trial.Place;
import charline.trial.Rig;
import charline.trial.Stratum;
import charline.window.RigSetup;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * Which trials and which rig a question is about.
 *
 * @param log refuses names that it does not know
 * @param rigs all rigs of the log
 * @param at moment whose power checks count
 */
record TrialChoice(Logbook log, List<Rig> rigs, Strata strata, OffsetDateTime at) {
  /** The strata that a question may mean, with their patches. */
  Map<Stratum, List<Patch>> fitting(TrialQuestion question) {
    FamilyAndWood about = question.named();
    Optional<Rig> rig = question.rig().map(this::rig);
    Strata counted = strata.with(question.way().placeOrFace());
    Map<Stratum, List<Patch>> all = counted.of(about);
    String what = about.family() + " over " + (about.anyWood() ? "any wood" : about.wood());
    if (all.isEmpty()) {
      requireNoneElsewhere(what, counted.elsewhere(about));
      throw Refusal.nothingFound(
          "The log has no patches of %s; it has %s."
              .formatted(what, inventory(strata.byStratum())));
    }
    Optional<Light> light = rig.map(Light::of).or(question::light);
    Map<Stratum, List<Patch>> fitting = new LinkedHashMap<>(all);
    fitting.keySet().removeIf(s -> light.isPresent() && !light.get().equals(Light.of(s)));
    if (fitting.isEmpty()) {
      throw Refusal.nothingFound(
          "%s was not tried with light %s(%s, %d nm), and trials with other light do not apply; the log has %s."
              .formatted(
                  what,
                  rig.map(r -> "like that of rig %s ".formatted(r.name())).orElse("of that kind "),
                  light.get().emission().word(),
                  light.get().wavelengthNanometres(),
                  inventory(all)));
    }
    return fitting;
  }

  private static void requireNoneElsewhere(String what, Map<Place, Integer> elsewhere) {
    if (!elsewhere.isEmpty()) {
      throw Refusal.nothingFound(
          "%s was not tried on the face of a board, and other places need not do the same; the log has %s: ask about that place."
              .formatted(
                  what,
                  elsewhere.entrySet().stream()
                      .map(e -> Figures.patches(e.getValue()) + " on " + e.getKey().word())
                      .collect(Collectors.joining("; "))));
    }
  }

  /**
   * The trials that answer a question, and the bench.
   *
   * @throws Refusal if nothing of that kind was tried, if several kinds of light were, or if a knob
   *     is known from nowhere
   */
  TrialCase choose(TrialQuestion question) {
    Map<Stratum, List<Patch>> fitting = fitting(question);
    if (fitting.size() > 1) {
      throw Refusal.lacking(
          Missing.LIGHT,
          "Trials with different light are never judged together, and the log has %s."
              .formatted(inventory(fitting)));
    }
    Map.Entry<Stratum, List<Patch>> only = fitting.entrySet().iterator().next();
    return subject(question, only.getKey(), only.getValue());
  }

  /** The trials of a stratum and the rig as a question sets it up. */
  TrialCase subject(TrialQuestion question, Stratum stratum, List<Patch> patches) {
    Rig rig = rig(question.rig().orElseGet(() -> RigSetup.mostUsedRig(patches).name()));
    Optional<Board> piece = question.piece().map(name -> piece(name, stratum));
    RigSetup bench = question.fixed().bench(rig, patches, at).withStrokes(question.strokes());
    Way asked =
        question
            .way()
            .onRig(rig.name())
            .withPulses(
                bench.pulses().map(Pulses::durationNanoseconds).orElse(OptionalDouble.empty()))
            .withMoisture(piece.map(Board::moisturePercent).orElse(OptionalDouble.empty()));
    return new TrialCase(
        question,
        new Trials(stratum, patches, question.asked().acceptTint(), asked).requireTried(),
        bench,
        piece,
        strata.with(asked.placeOrFace()).elsewhere(about(stratum)));
  }

  /** The patches of a stratum on the face and on another place. */
  List<Patch> patches(Stratum stratum, Place place) {
    return strata.with(place).of(stratum);
  }

  private static FamilyAndWood about(Stratum stratum) {
    return new FamilyAndWood(stratum.family(), stratum.wood());
  }

  /** The board of that name, which must be of the wood that is asked about. */
  Board piece(String name, Stratum stratum) {
    Board board = log.board(name);
    if (!stratum.covers(board.wood())) {
      throw Refusal.usage(
          "The piece must be of %s, and board %s is of %s; ask about %s over %s."
              .formatted(
                  stratum.wood(), board.name(), board.wood(), stratum.family(), board.wood()));
    }
    return board;
  }

  /** The same as {@link #choose}, empty where nothing of the kind was tried. */
  Optional<TrialCase> tried(TrialQuestion question) {
    try {
      return Optional.of(choose(question));
    } catch (Refusal nothing) {
      if (nothing.kind() != Refusal.Kind.NOTHING_FOUND) {
        throw nothing;
      }
      return Optional.empty();
    }
  }

  /** The rig of that name; the log refuses an unknown one and offers the nearest. */
  Rig rig(String name) {
    return rigs.stream()
        .filter(r -> r.name().equals(name.strip()))
        .findAny()
        .orElseGet(() -> log.rig(name));
  }

  static String inventory(Map<Stratum, List<Patch>> strata) {
    if (strata.isEmpty()) {
      return "no patches at all yet";
    }
    return strata.entrySet().stream()
        .map(
            e ->
                "%s (%s)"
                    .formatted(
                        e.getKey().words(), Figures.count(e.getValue().size(), "patch", "patches")))
        .collect(Collectors.joining("; "));
  }
}
