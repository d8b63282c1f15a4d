package charline.cli.trials;

import charline.answer.AllWindows;
import charline.answer.Answers;
import charline.answer.Precautions;
import charline.answer.PriorSensitivity;
import charline.answer.TrialQuestion;
import charline.answer.WeighedWindow;
import charline.answer.WindowAnswer;
import charline.cli.command.Hints;
import charline.cli.command.LogCommand;
import charline.cli.render.JsonReply;
import charline.log.Logbook;
import charline.refusal.Refusal;
import charline.wording.ApplicabilityText;
import charline.wording.Json;
import charline.wording.PriorText;
import charline.wording.WindowJson;
import charline.wording.WindowList;
import charline.wording.WindowText;
import java.util.function.Function;
import java.util.stream.Stream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code window}. */
@Command(
    addMethodSubcommands = false,
    name = "window",
    header = "Find the settings that clear the finish and leave the wood unburned.",
    description =
        "Gives the start setting and the ranges of power (%%), speed (mm/s) and passes that keep"
            + " your limits on a new board, or on one piece, or says plainly that there are none."
            + " Marks every knob outside your trials as UNTRIED. More patches may still close a"
            + " provisional window. There is no window for a coat that you must have sampled first,"
            + " or that must never be lasered. Exit code 1 means: no window.",
    footer = {
      "",
      "Examples:",
      "  charline window latex pine",
      "  charline window latex pine --risk 2%% --confidence 95%% --job-area 4.5m2",
      "  charline window latex pine --overlap 15%% --job-area 4.5m2 --job-risk 10%%",
      "  charline window latex pine --prior boathouse.prior",
      "  charline window latex larch --borrow --tone dark",
      "  charline window shellac any --rig Heron --at spot=0.6mm,rep=40kHz,width=60mm",
      "  charline window latex pine --piece boathouse-door",
      "  charline window --all --json"
    })
public final class Window extends LogCommand {
  @Option(names = "--all", description = "Every coating, wood and kind of light in the log.")
  private boolean all;

  @Mixin private QuestionOptions options;
  @Mixin private WorkOptions work;
  @Mixin private JobAreaOption job;
  @Mixin private JsonReply reply;

  @Override
  public Integer call() {
    TrialQuestion question = work.of(options.question(), options, job.squareMetres(), "--job-area");
    if (all ? !options.nothingNamed() : !options.named()) {
      throw Refusal.usage(
          "Name a coating family and a wood, such as `charline window latex pine`, or give --all.");
    }
    try (Logbook log = desk.logToRead()) {
      Answers answers = Answers.of(log, desk.now(), desk.kept());
      return all ? list(answers, question) : one(answers, question.about(options.about(log)));
    }
  }

  private int one(Answers answers, TrialQuestion question) {
    Precautions known = answers.precautions(question);
    if (known.barred()) {
      return NoBeamReply.print(desk, reply, question, known);
    }
    WeighedWindow weighed = answers.weighedWindow(question);
    WindowAnswer window = weighed.window();
    PriorSensitivity priors = weighed.priors();
    reply.print(
        desk.out(),
        () -> WindowJson.of(window).put("prior", PriorText.of(priors).json()),
        () ->
            ApplicabilityText.of(window.applicability()).text(CommandHints.HINTS)
                + WindowText.of(window, priors, CommandHints.HINTS).text());
    return window.isWindow() ? DONE : NO;
  }

  private int list(Answers answers, TrialQuestion question) {
    return reply.json()
        ? list(
            answers.windows(question, desk.progress(), WindowJson::of),
            all ->
                Json.text(
                        Stream.concat(
                                all.answers().stream(),
                                all.barred().stream()
                                    .map(barred -> WindowJson.of(barred, Hints.RECORD_SAMPLE)))
                            .toList())
                    + System.lineSeparator())
        : list(
            answers.windows(question, desk.progress(), WindowList.Line::of),
            all -> WindowList.of(all, Hints.RECORD_SAMPLE, CommandHints.HINTS));
  }

  private <T> int list(AllWindows<T> windows, Function<AllWindows<T>, String> text) {
    windows
        .skipped()
        .forEach(
            each ->
                desk.err()
                    .println(
                        "%s is left out: %s"
                            .formatted(each.stratum().words(), Hints.sentence(each.reason()))));
    desk.out().print(text.apply(windows));
    return windows.anyWindow() ? DONE : NO;
  }
}
