package charline.cli.trials;

import charline.cli.command.CommandContext;
import charline.cli.command.Release;
import charline.cli.command.TypedValues;
import charline.paper.SheetStamp;
import charline.refusal.Refusal;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.Optional;

/** Where a page is written to. */
final class PageFile {
  private PageFile() {}

  /** Refuses a file that is no page, or that is there already. */
  static void check(Path to, boolean replace) {
    if (!to.toString().toLowerCase(Locale.ROOT).endsWith(".html")) {
      throw TypedValues.refused(
          "--to",
          "the file must end in .html, not \"%s\"; a browser prints it to paper or PDF."
              .formatted(to.getFileName()));
    }
    if (!replace && Files.exists(to)) {
      throw Refusal.usage(
          "%s already exists; give another name, or --replace to overwrite it.".formatted(to));
    }
  }

  /** Where and when a page is printed. */
  static SheetStamp stamp(CommandContext desk, String by) {
    return new SheetStamp(
        String.valueOf(desk.logFile().getFileName()),
        Release.version(),
        desk.now(),
        Optional.of(desk.person(by)));
  }

  /** Writes a page at once: no half-written page is ever left behind. */
  static void write(String html, Path file) {
    try {
      Path draft = Files.createTempFile(file.toAbsolutePath().getParent(), ".page", ".html");
      try {
        Files.writeString(draft, html);
        Files.move(draft, file, StandardCopyOption.REPLACE_EXISTING);
      } finally {
        Files.deleteIfExists(draft);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
