package charline.log;

import charline.log.database.Database;
import charline.log.upgrade.Migrations;
import charline.log.upgrade.Schema;
import java.util.ArrayList;
import java.util.List;

/** Whether the file is whole: pages, indexes, rules, references and the steps that made it. */
final class IntegrityCheck {
  private IntegrityCheck() {}

  static List<Finding> faults(Database database) {
    List<Finding> faults = new ArrayList<>();
    for (String text :
        database.query("PRAGMA integrity_check", row -> row.text("integrity_check"))) {
      if (!text.equals("ok")) {
        faults.add(new Finding(Finding.Kind.FAULT, text));
      }
    }
    faults.addAll(
        database.query(
            "SELECT \"table\", parent FROM pragma_foreign_key_check",
            row ->
                new Finding(
                    Finding.Kind.FAULT,
                    "A row of %s refers to a row of %s that does not exist."
                        .formatted(row.text("table"), row.text("parent")))));
    Schema.differences(database.place()).stream()
        .map(text -> new Finding(Finding.Kind.FAULT, "The log's rules were changed: " + text))
        .forEach(faults::add);
    Migrations.unknownTo(database.place()).stream()
        .map(text -> new Finding(Finding.Kind.FAULT, text))
        .forEach(faults::add);
    return faults;
  }

  static Finding alteredPhoto(String code) {
    return new Finding(
        Finding.Kind.FAULT,
        "A photo of %s is damaged: its checksum differs from the one recorded.".formatted(code));
  }
}
