package charline.log;

import charline.log.database.Database;
import charline.log.reference.Nearest;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;

/**
 * Rigs, boards and finishes by the names that find them: their own, the ones that they had before,
 * and those of what was joined into them.
 */
final class Stock {
  private final Database database;
  private final RigTable rigs;
  private final BoardTable boards;
  private final FinishTable finishes;

  Stock(Database database, RigTable rigs, BoardTable boards, FinishTable finishes) {
    this.database = database;
    this.rigs = rigs;
    this.boards = boards;
    this.finishes = finishes;
  }

  List<Rig> rigs() {
    return database.inSnapshot(rigs::all);
  }

  Rig rig(String name) {
    return pick("rig", name, rigs(), Rig::name, Rig::id);
  }

  List<Board> boards() {
    return boards.all();
  }

  /** The board of that name, void or not. */
  Board board(String name) {
    return boards
        .byName(name.strip())
        .orElseGet(() -> pick("board", name, boards.alsoVoid(), Board::name, Board::id));
  }

  /** Refuses boards on which nothing is burned any more; asks once for all of them. */
  void requireCount(List<Board> some) {
    if (boards.hasVoid(some.stream().map(Board::id).toList())) {
      some.forEach(this::requireCounts);
    }
  }

  private void requireCounts(Board board) {
    boards
        .voided(board.id())
        .ifPresent(
            why -> {
              throw Refusal.data(
                  "Board %s is void (%s), so patches on it count nowhere; name another board, or bring this one back first."
                      .formatted(board.name(), why));
            });
  }

  List<Finish> finishes() {
    return database.inSnapshot(finishes::all);
  }

  Finish finish(String name) {
    return pick("finish", name, finishes(), Finish::name, Finish::id);
  }

  private <T> T pick(
      String kind, String name, List<T> all, Function<T, String> nameOf, Function<T, UUID> id) {
    String wanted = name.strip();
    return all.stream()
        .filter(t -> nameOf.apply(t).equalsIgnoreCase(wanted))
        .findFirst()
        .or(() -> formerly(kind, wanted).flatMap(f -> of(f, all, id)))
        .orElseThrow(() -> Nearest.refusal(kind, wanted, all.stream().map(nameOf).toList()));
  }

  private static <T> Optional<T> of(UUID wanted, List<T> all, Function<T, UUID> id) {
    return all.stream().filter(t -> id.apply(t).equals(wanted)).findFirst();
  }

  private Optional<UUID> formerly(String kind, String name) {
    return database.first(
        "SELECT id FROM %s_known_as WHERE name = ? COLLATE NOCASE ORDER BY former LIMIT 1"
            .formatted(kind),
        row -> row.id("id"),
        name);
  }

  /** Power checks of a rig that are void, each with the reason, in the order of metering. */
  List<VoidCheck> voidChecks(Rig rig) {
    return rigs.voidChecks(rig.id());
  }

  /** Upkeep of a rig that is void, each with the reason, in the order of doing. */
  List<VoidUpkeep> voidUpkeep(Rig rig) {
    return rigs.voidUpkeep(rig.id());
  }

  void requireCheckOf(Rig rig, PowerCheck check) {
    requireOf(rig, "power_check", check.id());
  }

  void requireUpkeepOf(Rig rig, Upkeep upkeep) {
    requireOf(rig, "upkeep", upkeep.id());
  }

  private void requireOf(Rig rig, String table, UUID id) {
    if (database
        .first(
            "SELECT 1 FROM %s WHERE id = ? AND rig_id = ?".formatted(table),
            row -> true,
            id,
            rig.id())
        .isEmpty()) {
      throw Refusal.usage(
          "Only recorded %s can be changed; rig %s has none of that identity."
              .formatted(table.equals("upkeep") ? "upkeep" : "power checks", rig.name()));
    }
  }
}
