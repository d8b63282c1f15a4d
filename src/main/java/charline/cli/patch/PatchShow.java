package charline.cli.patch;

import charline.cli.render.PatchView;
import charline.cli.render.ShowCommand;
import charline.log.KeptPhoto;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.record.Codes;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code patch show}. */
@Command(
    addMethodSubcommands = false,
    name = "show",
    header = "Show a patch with its readings, photos and changes.",
    description =
        "Shows the settings, also as they were typed, and the effect of one pass at a point on the"
            + " wood: pulses, overlaps, dwell. Dose per pass is in J/cm2.",
    footer = {"", "Example:", "  charline patch show P-0042"})
public final class PatchShow extends ShowCommand {
  @Parameters(paramLabel = "CODE", description = "The patch: P-0042, 42 or last.")
  private String code;

  @Override
  protected Shown shown(Logbook log) {
    PatchEntry entry = Codes.patch(log, code, desk.person(null));
    List<KeptPhoto> photos = log.photos(entry.patch().code());
    return new Shown(
        () -> PatchView.json(entry).put("photos", photos.stream().map(PatchView::photo).toList()),
        () -> PatchView.text(entry, photos),
        log.history(entry.patch().code()));
  }
}
