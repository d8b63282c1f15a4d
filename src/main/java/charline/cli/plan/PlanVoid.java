package charline.cli.plan;

import charline.cli.command.LogCommand;
import charline.cli.command.WhyOption;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.log.PlannedPatch;
import charline.record.Plans;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code plan void}. */
@Command(
    addMethodSubcommands = false,
    name = "void",
    header = "Give up planned patches that you will not burn.",
    description =
        "They stay in the log with the reason, and their codes stay taken, since they may be on a"
            + " list or on tape already.",
    footer = {
      "",
      "Examples:",
      "  charline plan void P-0051 --why \"the offcut is used up\"",
      "  charline plan void 51 52 53 --why \"enough patches at 60 %%\""
    })
public final class PlanVoid extends LogCommand {
  @Parameters(
      arity = "1..*",
      paramLabel = "CODE",
      description = "The planned patches: P-0051 or 51. Either all of them are given up or none.")
  private List<String> codes;

  @Mixin private WhyOption why;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    try (Logbook log = desk.logToRead()) {
      String reason =
          why.reason(
              "a plan is given up",
              () -> codes.stream().allMatch(code -> log.isFresh(log.planned().open(code).id())));
      List<PlannedPatch> given = new Plans(log).giveUp(codes, why.person(desk), reason);
      reply.sayAll(
          desk.out(),
          () ->
              given.stream().map(plan -> PlanList.json(plan).put("void_because", reason)).toList(),
          sentence(given, reason));
    }
    return DONE;
  }

  private static String sentence(List<PlannedPatch> given, String reason) {
    String all = given.stream().map(PlannedPatch::code).collect(Collectors.joining(", "));
    return given.size() == 1
        ? "%s is given up: %s. Its code stays taken; cross it out on the list and on the tape."
            .formatted(all, reason)
        : "%s are given up: %s. Their codes stay taken; cross them out on the list and on the tape."
            .formatted(all, reason);
  }
}
