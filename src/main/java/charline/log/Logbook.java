package charline.log;

import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.FamilyFacts;
import charline.trial.Finish;
import charline.trial.PowerCheck;
import charline.trial.Reading;
import charline.trial.Rig;
import charline.trial.WoodFacts;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Supplier;

/** The log of one workshop: an SQLite file that keeps every patch and every change to it. */
public final class Logbook implements AutoCloseable {
  private Logbook() {}

  /** Opens a log, making it where there is none. */
  public static Logbook open(Path file, Clock clock) {
    throw new UnsupportedOperationException();
  }

  /** Runs work in one transaction: all of it is kept, or none. Nested calls join in. */
  public <T> T inTransaction(Supplier<T> work) {
    throw new UnsupportedOperationException();
  }

  /** A new permanent identity (UUIDv7), rising with time. */
  public UUID newId() {
    throw new UnsupportedOperationException();
  }

  public List<Rig> rigs() {
    throw new UnsupportedOperationException();
  }

  /** The rig of that name; refuses an unknown one and offers the nearest names. */
  public Rig rig(String name) {
    throw new UnsupportedOperationException();
  }

  public void add(Rig rig, String by) {
    throw new UnsupportedOperationException();
  }

  public void addCheck(String rigName, PowerCheck check, String by) {
    throw new UnsupportedOperationException();
  }

  public List<Board> boards() {
    throw new UnsupportedOperationException();
  }

  public Board board(String name) {
    throw new UnsupportedOperationException();
  }

  public void add(Board board, String by) {
    throw new UnsupportedOperationException();
  }

  public List<Finish> finishes() {
    throw new UnsupportedOperationException();
  }

  public Finish finish(String name) {
    throw new UnsupportedOperationException();
  }

  public void add(Finish finish, String by) {
    throw new UnsupportedOperationException();
  }

  /**
   * The log's own word for a wood ("pine"), from any of its aliases; nearest offered if unknown.
   */
  public String wood(String word) {
    throw new UnsupportedOperationException();
  }

  /** The log's own word for a coating family ("latex"), from any of its aliases. */
  public String family(String word) {
    throw new UnsupportedOperationException();
  }

  public List<WoodFacts> woods() {
    throw new UnsupportedOperationException();
  }

  public List<FamilyFacts> families() {
    throw new UnsupportedOperationException();
  }

  /** Cautions for a family on a wood with one kind of light, most serious first. */
  public List<Caution> cautions(String family, String wood, charline.exposure.Emission emission) {
    throw new UnsupportedOperationException();
  }

  /** The code the next patch gets: P-0001, P-0002, ... */
  public String nextPatchCode() {
    throw new UnsupportedOperationException();
  }

  /** Records a patch with its readings. */
  public void add(PatchEntry entry) {
    throw new UnsupportedOperationException();
  }

  /** Records a further reading. */
  public void addReading(String code, Reading reading) {
    throw new UnsupportedOperationException();
  }

  /** The patch of that code; refuses an unknown one. Void patches are found too. */
  public PatchEntry patch(String code) {
    throw new UnsupportedOperationException();
  }

  /** Patches that match, oldest first; void ones are left out. */
  public List<PatchEntry> patches(Filter filter) {
    throw new UnsupportedOperationException();
  }

  /** The patch recorded last, void ones left out. */
  public Optional<PatchEntry> lastPatch() {
    throw new UnsupportedOperationException();
  }

  /** Replaces what is recorded of a patch and its readings; the old values stay in the history. */
  public void amend(PatchEntry entry, String by, String why) {
    throw new UnsupportedOperationException();
  }

  /** Takes a patch out of every analysis; it stays in the log with the reason. */
  public void voidPatch(String code, String by, String why) {
    throw new UnsupportedOperationException();
  }

  /** Every change to a patch and its readings, oldest first. */
  public List<Change> history(String code) {
    throw new UnsupportedOperationException();
  }

  @Override
  public void close() {
    throw new UnsupportedOperationException();
  }
}
