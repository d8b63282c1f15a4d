package charline.cli.render;

import charline.cli.command.LogCommand;
import charline.log.Change;
import charline.log.Logbook;
import charline.wording.Json;
import java.util.List;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;

/** Shows one record with its changes. */
public abstract class ShowCommand extends LogCommand {
  @Mixin private JsonReply reply;

  /**
   * A record to show.
   *
   * @param json without its changes
   * @param text without its changes, ended by a line feed
   */
  public record Shown(Supplier<Json> json, Supplier<String> text, List<Change> changes) {}

  /** The record that was asked for; refuses an unknown one. */
  protected abstract Shown shown(Logbook log);

  @Override
  public final Integer call() {
    try (Logbook log = desk.logToRead()) {
      Shown shown = shown(log);
      reply.print(
          desk.out(),
          () -> shown.json().get().put("changes", ChangesView.json(shown.changes())),
          () -> shown.text().get() + ChangesView.text(shown.changes()));
    }
    return DONE;
  }
}
