package charline.log;

import charline.log.database.Database;
import charline.refusal.Refusal;
import java.util.Optional;
import java.util.UUID;
import java.util.function.IntSupplier;

/** Rigs, boards and finishes: recorded and amended under a name that nothing else has. */
final class NamedRows {
  private final Database database;
  private final NameRules names;

  NamedRows(Database database) {
    this.database = database;
    names = new NameRules(database);
  }

  /**
   * Records something, all of it or nothing.
   *
   * @param kind what is recorded, which is the name of its table too
   */
  void add(String kind, String name, Runnable work) {
    database.inTransaction(
        () -> {
          names.requireFree(kind, name);
          names.requirePlain(kind, name);
          work.run();
          return null;
        });
  }

  /**
   * Amends something; to be called where changes are kept under a name and a reason.
   *
   * @param kind what is amended, which is the name of its table too
   * @param work gives how many rows it changed
   */
  void amend(String kind, UUID id, String name, IntSupplier work) {
    names.requireFree(kind, name, Optional.of(id));
    names.requirePlain(kind, name);
    if (work.getAsInt() == 0) {
      throw Refusal.usage(
          "Only a recorded %s can be amended; %s is not in this log under that identity."
              .formatted(kind, name));
    }
  }
}
