package charline.cli.log;

import charline.cli.command.CommandContext;
import charline.log.sheet.DateOrder;
import charline.log.sheet.OtherColumns;
import charline.log.sheet.OwnHeadings;
import charline.log.sheet.SheetManner;
import charline.record.SheetImport;
import charline.record.SheetImport.Files;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** How sheets are to be read that a person laid out. */
final class HeadingOptions {
  @Option(
      names = "--map",
      paramLabel = "HEADING=COLUMN",
      description =
          "A heading of your own and the column that it means, as \"speed=hand_mm_s\", or with the"
              + " unit of its numbers, as \"speed=hand_mm_s in/s\"; COLUMN may be skip. Remembered"
              + " beside the log for further sheets.")
  private List<String> maps = List.of();

  @Option(
      names = "--extra",
      paramLabel = "note|skip",
      description =
          "Columns that charline does not know: take them along in the note of each line, or leave"
              + " them out. Default: refuse the sheet and name them.")
  private String extra;

  @Option(
      names = "--dates",
      paramLabel = "ORDER",
      description = "How dates such as 03/09/2026 begin: day-first or month-first.")
  private String dates;

  @Option(names = "--headings", description = "Show the headings that are remembered.")
  private boolean show;

  @Option(
      names = "--forget",
      paramLabel = "HEADING",
      description = "Forget a heading that is remembered.")
  private List<String> forget = List.of();

  /** Whether the remembered headings alone are asked about. */
  boolean aboutHeadings() {
    return show || !forget.isEmpty();
  }

  /** The headings beside a log, after those are forgotten that shall be. */
  OwnHeadings remembered(Path log) {
    OwnHeadings all = OwnHeadings.keptBeside(log);
    for (String heading : forget) {
      all = all.without(heading);
    }
    if (!forget.isEmpty()) {
      all.keepBeside(log);
    }
    return all;
  }

  /** Reads the files; at a terminal, asks how their dates begin where that is not clear. */
  SheetImport.Sheets read(Files files, CommandContext desk) {
    SheetManner manner = manner(desk.logFile());
    try {
      return SheetImport.read(files, manner);
    } catch (Refusal e) {
      if (!e.missing().equals(Optional.of(Missing.DATE_ORDER)) || !desk.someoneToAsk()) {
        throw e;
      }
      desk.err().println(e.getMessage());
      String order =
          desk.need(null, "", "What comes first (day, month)", Optional.empty(), DateOrder::ofWord);
      return SheetImport.read(files, manner.with(DateOrder.ofWord(order)));
    }
  }

  private SheetManner manner(Path log) {
    return new SheetManner(
        extra == null ? OtherColumns.REFUSE : OtherColumns.ofWord(extra),
        dates == null ? DateOrder.UNKNOWN : DateOrder.ofWord(dates),
        own(log));
  }

  private OwnHeadings own(Path log) {
    OwnHeadings all = OwnHeadings.keptBeside(log);
    for (String map : maps) {
      all = all.with(map);
    }
    return all;
  }

  /** Remembers the headings that were given; says which. */
  Optional<String> remember(Path log) {
    if (maps.isEmpty()) {
      return Optional.empty();
    }
    own(log).keepBeside(log);
    return Optional.of(
        "Headings are remembered for further sheets; `charline import --headings` shows them.");
  }
}
