package charline.cli.render;

import charline.log.Change;
import charline.wording.Json;
import charline.wording.SettingsText;
import charline.wording.Table;
import java.util.List;

/** Changes to a record, as text and as JSON. */
final class ChangesView {
  private ChangesView() {}

  /** A heading and a sentence for each change; nothing where there was none. */
  static String text(List<Change> changes) {
    if (changes.isEmpty()) {
      return "";
    }
    StringBuilder text = new StringBuilder("Changes, oldest first\n");
    changes.stream()
        .filter(change -> !change.isEcho())
        .forEach(
            change -> text.append("  ").append(Table.paragraph(sentence(change))).append('\n'));
    return text.toString();
  }

  private static String sentence(Change change) {
    return "%s%s: %s%s"
        .formatted(
            SettingsText.minute(change.at()),
            change.by().map(who -> " " + who).orElse(""),
            change.words(),
            change.why().map(why -> " (" + why + ")").orElse(""));
  }

  static List<Json> json(List<Change> changes) {
    return changes.stream().map(ChangesView::json).toList();
  }

  private static Json json(Change change) {
    return new Json()
        .put("at", change.at().toString())
        .put("by", change.by())
        .put("what", change.what())
        .put("before", change.before())
        .put("after", change.after())
        .put("why", change.why());
  }
}
