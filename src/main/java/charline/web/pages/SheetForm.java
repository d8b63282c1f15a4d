package charline.web.pages;

import charline.log.sheet.DateOrder;
import charline.log.sheet.OtherColumns;
import charline.log.sheet.OwnHeadings;
import charline.log.sheet.SheetManner;
import io.javalin.http.Context;
import java.nio.file.Path;

/** What a person says on the page of sheets that they laid out themselves. */
final class SheetForm {
  private final Context ctx;
  private final Path log;
  private final OwnHeadings own;

  /** Headings are those beside the log and those of the page, a line each. */
  SheetForm(Context ctx, Path log) {
    this.ctx = ctx;
    this.log = log;
    OwnHeadings all = OwnHeadings.keptBeside(log);
    for (String line : Asking.text(ctx, "map").split("\\R")) {
      all = line.isBlank() ? all : all.with(line.strip());
    }
    own = all;
  }

  SheetManner manner() {
    String others = Asking.text(ctx, "extra");
    String dates = Asking.text(ctx, "dates");
    return new SheetManner(
        others.isEmpty() ? OtherColumns.REFUSE : OtherColumns.ofWord(others),
        dates.isEmpty() ? DateOrder.UNKNOWN : DateOrder.ofWord(dates),
        own);
  }

  /** Keeps the headings that were given here for further sheets. */
  void remember() {
    if (!Asking.text(ctx, "map").isBlank()) {
      own.keepBeside(log);
    }
  }
}
