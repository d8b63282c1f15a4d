package charline.cli.patch;

import charline.cli.command.LogCommand;
import charline.cli.command.SureOption;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.cli.render.PatchView;
import charline.log.Logbook;
import charline.record.Codes;
import charline.record.Patches;
import charline.refusal.Refusal;
import java.util.List;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code patch void}. */
@Command(
    addMethodSubcommands = false,
    name = "void",
    header = "Exclude patches from every analysis.",
    description =
        "They stay in the log with the reason; nothing is ever deleted, and `charline patch amend`"
            + " can make one count again.",
    footer = {
      "",
      "Examples:",
      "  charline patch void P-0042 --why \"fired 30 mm/s on the wrong board\"",
      "  charline patch void 42 43 44 --why \"burned through a dirty window\"",
      "  charline patch void --those \"mine on the sill since monday\" --why \"wrong board\""
    })
public final class PatchVoid extends LogCommand {
  @Parameters(
      arity = "0..*",
      paramLabel = "CODE",
      description = "The patches: P-0042, 42 or last. Either all of them are voided or none.")
  private List<String> codes = List.of();

  @Mixin private ThoseOption those;
  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    if (codes.isEmpty() != those.given()) {
      throw Refusal.usage(
          "Name the patches by their codes, or by a question with --those; give one of the two.");
    }
    try (Logbook log = desk.logToRead()) {
      List<String> meant =
          those.given()
              ? those.confirmed(log, desk, "void").stream().map(e -> e.patch().code()).toList()
              : codes;
      String reason =
          why.reason(
              "a patch is void",
              () ->
                  meant.stream()
                      .map(code -> Codes.recorded(log, code, why.person(desk)).patch())
                      .allMatch(log::isFresh));
      List<String> voided =
          new Patches(log, new SureOption()).takeOut(meant, why.person(desk), reason);
      reply.sayAll(
          desk.out(),
          () ->
              voided.stream()
                  .map(code -> PatchView.json(Codes.recorded(log, code, why.person(desk))))
                  .toList(),
          sentence(voided, reason));
    }
    return DONE;
  }

  private static String sentence(List<String> voided, String reason) {
    String all = String.join(", ", voided);
    return voided.size() == 1
        ? "%s is void: %s. It counts in no analysis and stays in the log.".formatted(all, reason)
        : "%s are void: %s. They count in no analysis and stay in the log.".formatted(all, reason);
  }
}
