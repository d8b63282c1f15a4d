package charline.log;

import charline.log.database.Database;
import charline.trial.PowerCheck;
import charline.trial.Rig;
import charline.trial.Upkeep;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.Supplier;

/** What is noted of a rig over time: power checks and upkeep. None of it is ever deleted. */
public final class RigEntries {
  private final Database database;
  private final RigTable rigs;
  private final Stock stock;
  private final History history;
  private final Supplier<OffsetDateTime> now;

  RigEntries(
      Database database,
      RigTable rigs,
      Stock stock,
      History history,
      Supplier<OffsetDateTime> now) {
    this.database = database;
    this.rigs = rigs;
    this.stock = stock;
    this.history = history;
    this.now = now;
  }

  /** Records a metered power. Patches burned from then on, already recorded or not, follow it. */
  public void addCheck(String rigName, PowerCheck check, String by) {
    database.inTransaction(
        () -> {
          rigs.addCheck(stock.rig(rigName).id(), check, Logbook.person(by));
          return null;
        });
  }

  /** Power checks of a rig that are void, in the order of metering. */
  public List<VoidCheck> voidChecks(Rig rig) {
    return stock.voidChecks(rig);
  }

  /** Replaces what a power check of a rig says; patches and windows follow it. */
  public void amend(Rig rig, PowerCheck check, String by, String why) {
    changing(rig, check, by, why, () -> rigs.amend(check));
  }

  /** Takes a power check out; it stays in the log with the reason. */
  public void voidCheck(Rig rig, PowerCheck check, String by, String why) {
    String reason = Logbook.reason(why);
    changing(rig, check, by, reason, () -> rigs.setVoid(check, reason));
  }

  /** Lets a void power check count again; a reason may be given. */
  public void bringBack(Rig rig, PowerCheck check, String by, String why) {
    changing(rig, check, by, why, () -> rigs.setVoid(check, null));
  }

  /** Upkeep of a rig that is void, in the order of doing. */
  public List<VoidUpkeep> voidUpkeep(Rig rig) {
    return stock.voidUpkeep(rig);
  }

  /** Records what was done to a rig. */
  public void addUpkeep(String rigName, Upkeep upkeep, String by) {
    database.inTransaction(
        () -> {
          rigs.addUpkeep(stock.rig(rigName).id(), upkeep, Logbook.person(by));
          return null;
        });
  }

  /** Replaces what is recorded of the upkeep of a rig; a reason may be given. */
  public void amend(Rig rig, Upkeep upkeep, String by, String why) {
    changing(rig, upkeep, by, why, () -> rigs.amend(upkeep));
  }

  /** Takes upkeep out; it stays in the log with the reason. */
  public void voidUpkeep(Rig rig, Upkeep upkeep, String by, String why) {
    String reason = Logbook.reason(why);
    changing(rig, upkeep, by, reason, () -> rigs.setVoid(upkeep, reason));
  }

  /** Lets void upkeep count again; a reason may be given. */
  public void bringBack(Rig rig, Upkeep upkeep, String by, String why) {
    changing(rig, upkeep, by, why, () -> rigs.setVoid(upkeep, null));
  }

  private void changing(Rig rig, PowerCheck check, String by, String why, Runnable work) {
    changing(by, why, () -> stock.requireCheckOf(rig, check), work);
  }

  private void changing(Rig rig, Upkeep upkeep, String by, String why, Runnable work) {
    changing(by, why, () -> stock.requireUpkeepOf(rig, upkeep), work);
  }

  private void changing(String by, String why, Runnable required, Runnable work) {
    history.amending(
        now.get(),
        Logbook.person(by),
        why == null ? null : Logbook.reason(why),
        () -> {
          required.run();
          work.run();
        });
  }
}
