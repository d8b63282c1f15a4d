package charline.cli.patch;

import charline.cli.command.LogCommand;
import charline.cli.command.WhatChanged;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.record.Codes;
import charline.trial.DoseKnobs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToIntFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code p}. */
@Command(
    addMethodSubcommands = false,
    name = "p",
    header = "Record the next patch: what you changed, and how it came out.",
    description =
        "Records a patch that is like your last one. Say what changed since and the outcome,"
            + " in any order: a bare number is the speed, the others carry their unit or name. The"
            + " first letters of an outcome will do: cl, ch, t, r.",
    footer = {
      "",
      "Examples:",
      "  charline p 18 clean",
      "  charline p ch 60%%",
      "  charline p 2p residue",
      "  charline p spot 0.9 tint+residue",
      "  charline p on sill-2 clean"
    })
public final class PatchNext extends LogCommand {
  private final ToIntFunction<List<String>> charline;

  @Parameters(
      arity = "0..*",
      paramLabel = "CHANGE",
      description =
          "18 or 18mm/s, 60%%, 120W, 2p (passes), a knob and its value, on BOARD, of FINISH, and"
              + " the outcome. At a terminal, what you leave out is asked.")
  private List<String> words = List.of();

  @Option(names = "--note", paramLabel = "TEXT", description = "A note on the patch.")
  private String note;

  @Option(
      names = "--by",
      paramLabel = "WHO",
      description = "Who burned it. Default: $$CHARLINE_BY, else your login name.")
  private String by;

  @Option(
      names = "--at",
      paramLabel = "TIME",
      description = "When: 14:30, yesterday or \"last friday 14:30\". Default: now.")
  private String at;

  @Option(names = "--sure", description = "Record it even if a value looks mistyped.")
  private boolean sure;

  @Option(names = "--json", description = "Print JSON, with units in the keys.")
  private boolean json;

  /**
   * @param charline runs a command of the program at the same desk and gives its exit code
   */
  public PatchNext(ToIntFunction<List<String>> charline) {
    this.charline = charline;
  }

  @Override
  public Integer call() {
    DoseKnobs pace;
    try (Logbook log = desk.logToRead()) {
      PatchEntry last = Codes.patch(log, "last", desk.person(by));
      pace = DoseKnobs.of(last.patch().settings().form());
    }
    List<String> said = words;
    if (said.isEmpty() && desk.someoneToAsk()) {
      said =
          List.of(
              desk.need(
                  null,
                  "",
                  "What changed (18, 60%, 2p, on BOARD; Enter for nothing)",
                  Optional.of(""),
                  text -> WhatChanged.options(split(text), pace)));
    }
    List<String> line = new ArrayList<>(List.of("patch", "add", "--like", "last"));
    line.addAll(WhatChanged.options(said.size() == 1 ? split(said.get(0)) : said, pace));
    add(line, "--note", note);
    add(line, "--by", by);
    add(line, "--at", at);
    if (sure) {
      line.add("--sure");
    }
    if (json) {
      line.add("--json");
    }
    return charline.applyAsInt(line);
  }

  private static List<String> split(String text) {
    return text.isBlank() ? List.of() : List.of(text.strip().split("\\s+"));
  }

  private static void add(List<String> line, String option, String value) {
    if (value != null) {
      line.add(option);
      line.add(value);
    }
  }
}
