package charline.log.merge;

import charline.log.Joins;
import charline.log.Logbook;
import charline.log.database.Database;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Knob;
import charline.trial.Rig;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.function.BiPredicate;
import java.util.function.Function;

/**
 * Rigs, boards and finishes that two logs each have under one name, set up separately, and that
 * agree in all that both know of them.
 *
 * @param kind what they are
 * @param from identity of the one that the other log brought
 * @param into identity of the one that was here
 * @param name what the one that was brought is called here
 * @param known name of the one that was here
 */
public record SetUpTwice(Joins.Kind kind, UUID from, UUID into, String name, String known) {
  /** Those that are not joined yet; where the other log has both, somebody knows them apart. */
  static List<SetUpTwice> of(Logbook log) {
    List<SetUpTwice> all = new ArrayList<>();
    all.addAll(of(log, Joins.Kind.RIG, log.rigs(), Rig::id, Rig::name, SetUpTwice::agree));
    all.addAll(of(log, Joins.Kind.BOARD, log.boards(), Board::id, Board::name, SetUpTwice::agree));
    all.addAll(
        of(log, Joins.Kind.FINISH, log.finishes(), Finish::id, Finish::name, SetUpTwice::agree));
    return all;
  }

  private static <T> List<SetUpTwice> of(
      Logbook log,
      Joins.Kind kind,
      List<T> things,
      Function<T, UUID> id,
      Function<T, String> name,
      BiPredicate<T, T> agree) {
    record Pair(UUID from, UUID into) {}
    Database database = log.database();
    List<Pair> pairs =
        database.query(
            """
            SELECT o.id AS brought, k.id AS known FROM other.%1$s o
            JOIN main.%1$s k ON k.name = o.name AND k.id <> o.id
            WHERE k.id NOT IN (SELECT id FROM other.%1$s) ORDER BY o.rowid
            """
                .formatted(kind.word()),
            row -> new Pair(row.id("brought"), row.id("known")));
    List<SetUpTwice> twice = new ArrayList<>();
    for (Pair pair : pairs) {
      Optional<T> from = things.stream().filter(t -> id.apply(t).equals(pair.from())).findFirst();
      Optional<T> into = things.stream().filter(t -> id.apply(t).equals(pair.into())).findFirst();
      if (from.isPresent() && into.isPresent() && agree.test(from.get(), into.get())) {
        twice.add(
            new SetUpTwice(
                kind, pair.from(), pair.into(), name.apply(from.get()), name.apply(into.get())));
      }
    }
    return twice;
  }

  private static boolean agree(Rig a, Rig b) {
    return a.emission() == b.emission()
        && a.ratedWatts() == b.ratedWatts()
        && a.wavelengthNanometres() == b.wavelengthNanometres()
        && agree(a.spotMillimetres(), b.spotMillimetres(), a.spotDefinition() == b.spotDefinition())
        && agree(a.repetitionKilohertz(), b.repetitionKilohertz(), true)
        && agree(a.pulseNanoseconds(), b.pulseNanoseconds(), true)
        && agree(a.scanWidthMillimetres(), b.scanWidthMillimetres(), true)
        && agree(a.lens(), b.lens())
        && agree(a.usual().values(), b.usual().values())
        && agree(a.optics().focusSpotMillimetres(), b.optics().focusSpotMillimetres(), true)
        && agree(a.optics().beamQuality(), b.optics().beamQuality(), true);
  }

  /** What both know is the same. */
  private static boolean agree(Map<Knob, Object> a, Map<Knob, Object> b) {
    return a.entrySet().stream()
        .allMatch(
            known -> known.getValue().equals(b.getOrDefault(known.getKey(), known.getValue())));
  }

  private static boolean agree(Board a, Board b) {
    return a.wood().equals(b.wood())
        && a.form() == b.form()
        && agree(a.job(), b.job())
        && agree(a.condition(), b.condition());
  }

  private static boolean agree(Finish a, Finish b) {
    return a.family().equals(b.family())
        && (a.coats().isEmpty() || b.coats().isEmpty() || a.coats().equals(b.coats()));
  }

  private static boolean agree(OptionalDouble a, OptionalDouble b, boolean alike) {
    return a.isEmpty() || b.isEmpty() || alike && a.equals(b);
  }

  private static boolean agree(Optional<String> a, Optional<String> b) {
    return a.isEmpty() || b.isEmpty() || Objects.equals(a, b);
  }
}
