package charline.cli.trials;

import charline.answer.FamilyAndWood;
import charline.answer.Precautions;
import charline.answer.TrialQuestion;
import charline.cli.command.CommandContext;
import charline.cli.command.Hints;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.wording.Json;
import charline.wording.NoBeamText;

/** The answer where the beam stays off: the same for a list, a window, a quote and a sheet. */
final class NoBeamReply {
  private NoBeamReply() {}

  /** Prints it and gives the exit code: the answer is no. */
  static int print(CommandContext desk, JsonReply reply, TrialQuestion asked, Precautions known) {
    FamilyAndWood about = asked.named();
    reply.print(
        desk.out(),
        () ->
            NoBeamText.json(
                new Json()
                    .put(
                        "stratum",
                        new Json().put("family", about.family()).put("wood", about.wood())),
                known,
                Hints.RECORD_SAMPLE),
        () -> text(asked, known));
    return LogCommand.NO;
  }

  private static String text(TrialQuestion asked, Precautions known) {
    FamilyAndWood about = asked.named();
    return NoBeamText.text(
        about.family() + " on " + (about.anyWood() ? "any wood" : about.wood()),
        known,
        Hints.RECORD_SAMPLE);
  }
}
