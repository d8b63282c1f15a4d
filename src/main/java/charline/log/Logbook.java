package charline.log;

import charline.log.database.Database;
import charline.log.database.SqliteFile;
import charline.log.database.Upgrade;
import charline.log.database.Where;
import charline.log.reference.Nearest;
import charline.log.reference.Reference;
import charline.log.upgrade.LogCopy;
import charline.log.upgrade.Migrations;
import charline.progress.WorkWatch;
import charline.refusal.Refusal;
import charline.trial.Board;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.PlainText;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.UsualValues;
import java.io.InputStream;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * The log of one workshop: an SQLite file that keeps every patch and every change to it.
 *
 * <p>Several programs may have one log open; several threads may share one {@code Logbook}. Every
 * method that records does so in a transaction of its own, or joins the one it is called in. What
 * the log will not take is a {@link Refusal} with one sentence for the person. Times are kept to
 * the millisecond.
 */
public final class Logbook implements AutoCloseable {
  private static final int MINUTES_OF_A_SLIP = 10;

  private final Database database;
  private final Clock clock;
  private final Identity identity;
  private final RigTable rigs;
  private final BoardTable boards;
  private final FinishTable finishes;
  private final PatchTable patches;
  private final PlannedPatches planned;
  private final Amendment amendment;
  private final History history;
  private final ReadingTable readings;
  private final PhotoTable photos;
  private final Samples samples;
  private final Reference reference;
  private final NamedRows named;
  private final Stock stock;
  private final Joins joins;
  private final NewPatches newPatches;
  private final OwnWords ownWords;
  private final RigEntries rigEntries;

  private Logbook(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
    identity = new Identity(clock, database.randomBits());
    rigs = new RigTable(database);
    boards = new BoardTable(database);
    finishes = new FinishTable(database);
    readings = new ReadingTable(database);
    patches = new PatchTable(database, rigs, boards, finishes, readings);
    planned = new PlannedPatches(database, rigs, boards, patches);
    history = new History(database);
    amendment = new Amendment(patches, readings);
    photos = new PhotoTable(database);
    samples = new Samples(database, finishes, history, this::now);
    reference = new Reference(database);
    named = new NamedRows(database);
    stock = new Stock(database, rigs, boards, finishes);
    joins = new Joins(database);
    newPatches = new NewPatches(database, stock, patches, planned, this::now);
    ownWords = new OwnWords(database, reference, history, this::now);
    rigEntries = new RigEntries(database, rigs, stock, history, this::now);
  }

  /** Opens a log, making it and its folders where there is none. */
  public static Logbook open(Path file, Clock clock) {
    return over(LogFile.open(file), clock);
  }

  /** Opens a log that must be there already, for commands that only read. */
  public static Logbook openExisting(Path file, Clock clock) {
    return over(LogFile.openExisting(file), clock);
  }

  /**
   * Opens a log that must be there already and is only read: one that cannot be written to is read
   * from a copy.
   */
  public static Logbook openToRead(Path file, Clock clock) {
    return over(LogFile.openToRead(file, false), clock);
  }

  /** The same for a log whose rules another program may have changed. */
  public static Logbook openToCheck(Path file, Clock clock) {
    return over(LogFile.openToRead(file, true), clock);
  }

  static Logbook over(Database database, Clock clock) {
    try {
      return new Logbook(database, clock);
    } catch (RuntimeException e) {
      database.close();
      throw e;
    }
  }

  /** The version that a log has after it was opened. */
  public static int newestVersion() {
    return Migrations.NEWEST;
  }

  /** The version of the SQLite that logs are read and written with. */
  public static String sqliteVersion() {
    return SqliteFile.version();
  }

  /** The open file, for the other packages of the log alone: nobody else writes SQL. */
  public Database database() {
    return database;
  }

  /** The file that the log lies in. */
  public Path file() {
    return database.file();
  }

  /**
   * Runs work in one transaction: all of it is kept, or none. Nested calls join in. Nobody else can
   * record meanwhile, so that a code taken from {@link #nextPatchCode} inside is still free when
   * the patch is added.
   */
  public <T> T inTransaction(Supplier<T> work) {
    return database.inTransaction(work);
  }

  /** The same for work of which a large part is left to {@link #later}. */
  public <T> T inLargeTransaction(Supplier<T> work) {
    return database.inTransaction(() -> database.workingBehind(work));
  }

  /**
   * Records something while the large transaction that this is part of goes on; in any other it is
   * done at once. Whoever asks the log sees it; what goes wrong with it is told at a later call, at
   * the end of the transaction at the latest.
   */
  public void later(Runnable recording) {
    database.later(recording);
  }

  /** A new permanent identity (UUIDv7), rising with time. */
  public UUID newId() {
    return identity.next();
  }

  /** All rigs with the power checks that count, by name. */
  public List<Rig> rigs() {
    return stock.rigs();
  }

  /**
   * The rig of that name, which may be one that it had before, or that of a rig joined into it;
   * refuses an unknown one and offers the nearest names.
   */
  public Rig rig(String name) {
    return stock.rig(name);
  }

  /** Records a rig with its power checks. */
  public void add(Rig rig, String by) {
    named.add("rig", rig.name(), () -> rigs.add(rig, now(), person(by)));
  }

  /** Replaces the record of a rig, not its checks; a reason may be given. */
  public void amend(Rig rig, String by, String why) {
    changing(by, why, () -> named.amend("rig", rig.id(), rig.name(), () -> rigs.amend(rig)));
  }

  /** Power checks and upkeep of rigs. */
  public RigEntries rigEntries() {
    return rigEntries;
  }

  /** Scan figures that patches and rigs of this log have, a word each. */
  public List<String> figures() {
    return patches.figures();
  }

  /**
   * Joins a rig, board or finish that was set up twice into its other record, with all its patches,
   * power checks and open plans; a reason may be given.
   */
  public void join(Joins.Kind kind, UUID from, UUID into, String by, String why) {
    changing(by, why, () -> joins.join(kind, from, into));
  }

  /** All boards that count, by name. */
  public List<Board> boards() {
    return stock.boards();
  }

  /**
   * The board of that name, void or not; the name may be one that it had before, or that of a board
   * joined into it. Refuses an unknown one and offers the nearest names.
   */
  public Board board(String name) {
    return stock.board(name);
  }

  /** Boards that are void, by name. */
  public List<Board> voidBoards() {
    return boards.voidOnes();
  }

  /** Why a board is void; empty if it counts. */
  public Optional<String> voided(Board board) {
    return boards.voided(board.id());
  }

  /** Takes a board out with its patches; it stays in the log with the reason. */
  public void voidBoard(Board board, String by, String why) {
    String reason = reason(why);
    changing(by, reason, () -> boards.setVoid(board.id(), reason));
  }

  /** Lets a void board count again; a reason may be given. */
  public void bringBack(Board board, String by, String why) {
    changing(by, why, () -> boards.setVoid(board.id(), null));
  }

  /** Records a board; its wood must be a word of {@link Reference#woods}. */
  public void add(Board board, String by) {
    named.add("board", board.name(), () -> boards.add(board, now(), person(by)));
  }

  /** Replaces the record of a board; a reason may be given. */
  public void amend(Board board, String by, String why) {
    changing(
        by, why, () -> named.amend("board", board.id(), board.name(), () -> boards.amend(board)));
  }

  /** All finishes with their coats, by name. */
  public List<Finish> finishes() {
    return stock.finishes();
  }

  /**
   * The finish of that name, which may be one that it had before, or that of a finish joined into
   * it; refuses an unknown one and offers the nearest names.
   */
  public Finish finish(String name) {
    return stock.finish(name);
  }

  /** Records a finish; its families must be words of {@link Reference#families}. */
  public void add(Finish finish, String by) {
    named.add("finish", finish.name(), () -> finishes.add(finish, now(), person(by)));
  }

  /** Replaces the record of a finish and its coats; a reason may be given. */
  public void amend(Finish finish, String by, String why) {
    Optional<String> said = Optional.ofNullable(why);
    changing(
        by,
        why,
        () ->
            named.amend("finish", finish.id(), finish.name(), () -> finishes.amend(finish, said)));
  }

  /** Woods, coating families, cautions and substances, those that people added among them. */
  public Reference reference() {
    return reference;
  }

  /** Woods and families that people added. */
  public OwnWords ownWords() {
    return ownWords;
  }

  /** Results of samples. */
  public Samples samples() {
    return samples;
  }

  /**
   * The code the next patch gets: P-0001, P-0002, ...; planned ones are left out. Take it inside
   * the transaction that adds the patch.
   */
  public String nextPatchCode() {
    return planned.nextCode();
  }

  /** Planned patches; recording a patch under a planned code fulfils the plan. */
  public PlannedPatches planned() {
    return planned;
  }

  /** True if a patch has that code, void ones included. */
  public boolean hasPatch(String code) {
    return patches.has(code.strip());
  }

  /** Those of some codes that patches have, void ones included, as they were recorded. */
  public List<String> known(List<String> codes) {
    return patches.known(codes);
  }

  /** True if no other patch of that finish is in the log, void ones apart. */
  public boolean isFirstOfItsFinish(Patch patch) {
    return !patches.hasOthersOn(patch.finish().id(), patch.code());
  }

  /** What a rig had so far. */
  public UsualValues usual(Rig rig) {
    return patches.usual(rig, new UUID(0, 0));
  }

  /**
   * The same without one patch.
   *
   * @param except a patch that does not count, as it is the one in question
   */
  public UsualValues usual(Rig rig, Patch except) {
    return patches.usual(rig, except.id());
  }

  /** Records a patch with its readings, by whoever burned it. */
  public void add(PatchEntry entry) {
    add(entry, entry.by().orElse(""));
  }

  /**
   * Records a patch with its readings.
   *
   * @param recorder who records it, for whom it is the last patch then
   */
  public void add(PatchEntry entry, String recorder) {
    newPatches.adding(List.of(entry), Optional.of(recorder)).run();
  }

  /**
   * Prepares patches of a trial sheet, which are nobody's last ones; gives what records all of them
   * or none.
   */
  public Runnable bringingIn(List<PatchEntry> entries) {
    return entries.isEmpty() ? () -> {} : newPatches.adding(entries, Optional.empty());
  }

  /** Records a further reading. */
  public void addReading(String code, Reading reading) {
    inTransaction(
        () -> {
          PatchEntry entry = patch(code);
          Reading said = reading.withoutBlankNote();
          amendment.requireFollows(entry, said);
          readings.add(entry.patch().id(), said);
          return null;
        });
  }

  /**
   * The patch of that code; refuses an unknown one. Void patches are found too. The log's own codes
   * may be shortened: 42 and p-42 mean P-0042.
   */
  public PatchEntry patch(String code) {
    return patches
        .byCode(code.strip())
        .or(() -> PatchCode.spelledOut(code).flatMap(patches::byCode))
        .orElseThrow(() -> Nearest.refusal("patch", code.strip(), patches.codes()));
  }

  /** The patch of that identity, void or not. */
  public Optional<PatchEntry> patch(UUID id) {
    return patches.byId(id);
  }

  /**
   * True if a patch, reading or photo of that identity was recorded at any time, void or struck
   * ones included: whoever sends an entry twice records it once.
   */
  public boolean holds(UUID id) {
    return LogState.knows(database, id);
  }

  /**
   * Differs from what it was before whenever anyone, in this program or another, may have changed
   * the log since.
   */
  public String state() {
    return LogState.token(database);
  }

  /** Patches that match, oldest first; void ones are left out. */
  public List<PatchEntry> patches(Filter filter) {
    return patches.matching(filter.where());
  }

  /** Patches that meet a condition, oldest first, for the other packages of the log alone. */
  public List<PatchEntry> patches(Where where) {
    return patches.matching(where);
  }

  /** True if a patch was recorded so lately that what is wrong with it is most likely a slip. */
  public boolean isFresh(Patch patch) {
    return patches.recordedSince(patch.id(), now().minusMinutes(MINUTES_OF_A_SLIP));
  }

  /** True if the identity of what this log keeps was given in the last ten minutes. */
  public boolean isFresh(UUID id) {
    return !Identity.givenAt(id).isBefore(now().minusMinutes(MINUTES_OF_A_SLIP).toInstant());
  }

  /** True if a patch was ever recorded, void or not. */
  public boolean hasPatches() {
    return patches.any();
  }

  /**
   * The patch that a person burned or recorded last, void or not; never one that a merge or an
   * import brought.
   */
  public Optional<PatchEntry> lastRecorded(String person) {
    return patches.lastRecorded(person);
  }

  /** The same, void ones left out. */
  public Optional<PatchEntry> lastPatch(String person) {
    return patches.last(person);
  }

  /** When the last patch entered this log by its clock; merged ones bring times of another. */
  public Optional<OffsetDateTime> lastRecordedAt() {
    return patches.lastRecordedAt();
  }

  /**
   * Replaces what is recorded of a patch and its readings; the old values stay in the history.
   * Readings are told apart by identity: new ones are added, ones left out are struck and stay in
   * the log. An entry whose {@code voided} is empty brings a void patch back.
   *
   * @param why may be null where no reading is left out
   */
  public void amend(PatchEntry entry, String by, String why) {
    String reason = why == null ? null : reason(why);
    changing(by, reason, () -> amendment.write(entry.withoutBlankNotes(), reason));
  }

  /** Takes a patch out of every analysis; it stays in the log with the reason. */
  public void voidPatch(String code, String by, String why) {
    String reason = reason(why);
    inTransaction(
        () -> {
          PatchEntry voided = amendment.voided(patch(code), reason);
          history.amending(now(), person(by), reason, () -> patches.amend(voided));
          return null;
        });
  }

  /**
   * Gives planned patches up, all of them or none; they stay in the log with the reason, and their
   * codes stay taken.
   *
   * @return the plans that were open and are void now
   * @throws Refusal if one of them is not open
   */
  public List<PlannedPatch> voidPlans(List<String> codes, String by, String why) {
    String reason = reason(why);
    return inTransaction(
        () -> {
          List<PlannedPatch> plans = codes.stream().map(planned::open).distinct().toList();
          history.amending(now(), person(by), reason, () -> planned.giveUp(plans, reason));
          return plans;
        });
  }

  /** Keeps a photograph of a patch. */
  public void addPhoto(String code, Photo photo, String by) {
    inTransaction(
        () -> {
          photos.add(patch(code).patch().id(), photo, person(by));
          return null;
        });
  }

  /** The photographs of a patch, oldest first. */
  public List<KeptPhoto> photos(String code) {
    return photos.of(patch(code).patch().id());
  }

  /** What a photograph shows, read piece by piece; nothing where there is no such photograph. */
  public InputStream photoContent(UUID photo) {
    return photos.content(photo);
  }

  /** Every change to a rig, its power checks and upkeep, and rigs joined into it, oldest first. */
  public List<Change> history(Rig rig) {
    return history.of(rig.id());
  }

  /** Every change to a board and boards joined into it, oldest first. */
  public List<Change> history(Board board) {
    return history.of(board.id());
  }

  /** Every change to a finish, its coats, and finishes joined into it, oldest first. */
  public List<Change> history(Finish finish) {
    return history.of(finish.id());
  }

  /** What became of a plan, oldest first. */
  public List<Change> history(PlannedPatch plan) {
    return history.of(plan.id());
  }

  /** Every change to a patch and its readings, oldest first. */
  public List<Change> history(String code) {
    return history.of(patch(code).patch().id());
  }

  /** The upgrade made when the log was opened, if it came from an older version. */
  public Optional<Upgrade> upgrade() {
    return database.upgrade();
  }

  /** Writes a consistent copy to a new file, also while others record. */
  public void backup(Path copy) {
    LogCopy.backup(database.place(), copy);
  }

  /** Damage to the file, then values that may be mistyped; empty if there are none. */
  public List<Finding> check() {
    return check(WorkWatch.NONE);
  }

  /** The same, telling how far it is. */
  public List<Finding> check(WorkWatch progress) {
    return database.inSnapshot(
        () -> new LogCheck(this, patches, history, photos, progress).findings());
  }

  @Override
  public void close() {
    database.close();
  }

  /** The time by the clock of this log, in its zone. */
  public OffsetDateTime now() {
    return OffsetDateTime.now(clock);
  }

  /**
   * Changes a record, all of it or nothing, under a name and a reason.
   *
   * @param why null if none is given
   */
  private void changing(String by, String why, Runnable work) {
    history.amending(now(), person(by), why == null ? null : reason(why), work);
  }

  static String reason(String why) {
    return PlainText.answer(Optional.ofNullable(why))
        .orElseThrow(
            () ->
                Refusal.usage("A change to a record needs a reason, and none was given; say why."));
  }

  /** Who it was as the log keeps it, null if not noted. */
  static String person(String by) {
    return PlainText.answer(Optional.ofNullable(by)).orElse(null);
  }
}
