package charline.log.sheet;

import charline.log.database.PrivateFile;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.Map;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.io.csv.CsvWriteOptions;

/** Writes CSV text that {@link TextTable} reads back cell by cell. */
final class CsvFile {
  private CsvFile() {}

  /**
   * The text of a sheet.
   *
   * @param columns cells by heading, in the order of the sheet
   */
  static String text(Map<String, List<String>> columns) {
    Table table = Table.create("sheet");
    columns.forEach((heading, cells) -> table.addColumns(StringColumn.create(heading, cells)));
    boolean edges =
        columns.values().stream().flatMap(List::stream).anyMatch(c -> !c.equals(c.strip()));
    StringWriter text = new StringWriter();
    table
        .write()
        .usingOptions(
            CsvWriteOptions.builder(text)
                .lineEnd("\n")
                .quoteAllFields(edges) // blanks at the ends live only inside quotes
                .ignoreLeadingWhitespaces(false)
                .ignoreTrailingWhitespaces(false)
                .build());
    return text.toString();
  }

  /**
   * Writes a file at once: an existing one is replaced only by a whole sheet.
   *
   * @throws Refusal if the file cannot be written
   */
  static void write(String text, Path file) {
    // Beside the file and not in the temporary folder: a move within one folder is at once.
    Path draft = file.toAbsolutePath().resolveSibling(file.getFileName() + ".part");
    try {
      try {
        PrivateFile.discard(draft);
        PrivateFile.begin(draft);
        Files.writeString(draft, text, StandardCharsets.UTF_8);
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        PrivateFile.discard(draft);
      }
    } catch (IOException e) {
      throw Refusal.data(
          "%s cannot be written; check that its folder exists and is writable.".formatted(file), e);
    }
  }
}
