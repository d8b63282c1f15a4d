package charline.cli.finish;

import charline.answer.Precautions;
import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Filter;
import charline.log.Logbook;
import charline.quantity.Figures;
import charline.record.Setup;
import charline.trial.Coat;
import charline.trial.Finish;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code finish amend}. */
@Command(
    addMethodSubcommands = false,
    name = "amend",
    header = "Correct the record of a finish; the old values stay in the history.",
    description =
        "Values that you do not give stay unchanged. With --coat give the whole stack, outermost"
            + " first, as for finish add (um, or mil). The patches on the finish follow it: with"
            + " another family, they count for that family. The old name keeps finding it.",
    footer = {
      "",
      "Examples:",
      "  charline finish amend wall-latex --coat latex:pale:120um --coat primer \\",
      "      --why \"measured at the chip\"",
      "  charline finish amend wall-latex --name \"wall latex, north\""
    })
public final class FinishAmend extends LogCommand {
  @Parameters(paramLabel = "NAME", description = "The finish.")
  private String name;

  @Option(names = "--name", paramLabel = "NAME", description = "Its new name.")
  private String newName;

  @Option(
      names = "--coat",
      paramLabel = "COAT",
      description = "A coat, such as latex:pale:90um, varnish:mid or shellac.")
  private List<String> coats;

  @Option(
      names = "--family",
      paramLabel = "FAMILY",
      description =
          "Coating family that it counts as. Default: unchanged, or that of the outermost coat if"
              + " the finish counted as its outermost coat before.")
  private String family;

  @Mixin private WhyOption why;
  @Mixin private SureOption sure;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    String reason = why.reasonIfAny();
    try (Logbook log = desk.logToRead()) {
      Finish old = log.finish(name);
      List<Coat> stack = coats == null ? old.coats() : TypedCoats.read(log, coats);
      Finish amended =
          new Finish(
              old.id(),
              newName == null ? old.name() : newName.strip(),
              family == null ? family(old, stack) : log.reference().family(family),
              stack);
      new Setup(log, sure, why.person(desk)).amend(old, amended, reason);
      int patches = log.patches(Filter.onFinish(amended.name())).size();
      FinishView.recorded(
          amended,
          "Finish %s now reads: %s, counted as %s. %s affected."
              .formatted(
                  amended.name(),
                  FinishView.stack(amended),
                  amended.family(),
                  Figures.count(patches, "patch is", "patches are")),
          Precautions.of(log, amended),
          reply,
          desk.out());
    }
    return DONE;
  }

  /** A finish that counts as its outermost coat goes on doing so. */
  private static String family(Finish old, List<Coat> stack) {
    boolean asOutermost =
        !old.coats().isEmpty() && old.family().equals(old.coats().get(0).family());
    return asOutermost ? stack.get(0).family() : old.family();
  }
}
