package charline.cli;

import charline.cli.ask.Find;
import charline.cli.bench.BenchCommand;
import charline.cli.board.BoardAdd;
import charline.cli.board.BoardAmend;
import charline.cli.board.BoardJoin;
import charline.cli.board.BoardList;
import charline.cli.board.BoardShow;
import charline.cli.board.BoardVoid;
import charline.cli.command.CommandContext;
import charline.cli.command.LogCommand;
import charline.cli.completion.Completion;
import charline.cli.demo.Demo;
import charline.cli.finish.FinishAdd;
import charline.cli.finish.FinishAmend;
import charline.cli.finish.FinishJoin;
import charline.cli.finish.FinishList;
import charline.cli.finish.FinishShow;
import charline.cli.log.Backup;
import charline.cli.log.Check;
import charline.cli.log.Export;
import charline.cli.log.Import;
import charline.cli.log.MergeLog;
import charline.cli.patch.PatchAdd;
import charline.cli.patch.PatchAmend;
import charline.cli.patch.PatchNext;
import charline.cli.patch.PatchRead;
import charline.cli.patch.PatchShow;
import charline.cli.patch.PatchVoid;
import charline.cli.plan.PlanList;
import charline.cli.plan.PlanVoid;
import charline.cli.rig.RigAdd;
import charline.cli.rig.RigAmend;
import charline.cli.rig.RigCheck;
import charline.cli.rig.RigCheckAmend;
import charline.cli.rig.RigCheckVoid;
import charline.cli.rig.RigDrift;
import charline.cli.rig.RigJoin;
import charline.cli.rig.RigList;
import charline.cli.rig.RigShow;
import charline.cli.rig.RigUpkeep;
import charline.cli.rig.RigUpkeepAmend;
import charline.cli.rig.RigUpkeepList;
import charline.cli.rig.RigUpkeepVoid;
import charline.cli.sample.SampleAdd;
import charline.cli.sample.SampleAmend;
import charline.cli.sample.SampleList;
import charline.cli.sample.SampleShow;
import charline.cli.sample.SampleVoid;
import charline.cli.trials.Compare;
import charline.cli.trials.Next;
import charline.cli.trials.Onset;
import charline.cli.trials.PriorShow;
import charline.cli.trials.QuoteJob;
import charline.cli.trials.Removal;
import charline.cli.trials.Risk;
import charline.cli.trials.Sheet;
import charline.cli.trials.Window;
import charline.cli.word.FamilyAdd;
import charline.cli.word.FamilyAmend;
import charline.cli.word.FamilyList;
import charline.cli.word.FamilyShow;
import charline.cli.word.WoodAdd;
import charline.cli.word.WoodAmend;
import charline.cli.word.WoodList;
import charline.cli.word.WoodShow;
import charline.refusal.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/**
 * The commands by name. Only the one that is called for is made, since making them all is what a
 * start would spend its time on; all are made where they are to be listed or a nearest one offered.
 */
final class Commands {
  /** First words in the order of the help; a list of second words where there are any. */
  private static final Map<String, List<String>> WORDS = new LinkedHashMap<>();

  static {
    WORDS.put("rig", List.of("add", "list", "show", "amend", "join", "check", "upkeep", "drift"));
    WORDS.put("board", List.of("add", "list", "show", "amend", "void", "join"));
    WORDS.put("finish", List.of("add", "list", "show", "amend", "join"));
    WORDS.put("wood", List.of("list", "show", "add", "amend"));
    WORDS.put("family", List.of("list", "show", "add", "amend"));
    WORDS.put("sample", List.of("add", "list", "show", "amend", "void"));
    WORDS.put("patch", List.of("add", "read", "show", "amend", "void"));
    WORDS.put("p", List.of());
    WORDS.put("plan", List.of("list", "void"));
    WORDS.put("find", List.of());
    for (String word :
        List.of(
            "window", "risk", "compare", "next", "quote", "onset", "removal", "prior", "sheet")) {
      WORDS.put(word, List.of());
    }
    WORDS.put("import", List.of());
    WORDS.put("export", List.of());
    WORDS.put("bench", List.of());
    for (String word : List.of("merge", "backup", "check")) {
      WORDS.put(word, List.of());
    }
    WORDS.put("demo", List.of());
    WORDS.put("completion", List.of());
  }

  /** Commands that have words of their own to follow. */
  private static final Map<String, List<String>> THIRD =
      Map.of(
          "rig check", List.of("amend", "void"),
          "rig upkeep", List.of("list", "amend", "void"));

  private Commands() {}

  /** Every command that can be called, such as "rig add" and "find". */
  static List<String> all() {
    List<String> all = new ArrayList<>();
    WORDS.forEach(
        (first, seconds) -> {
          if (seconds.isEmpty()) {
            all.add(first);
          }
          seconds.forEach(
              second -> {
                String command = first + " " + second;
                all.add(command);
                THIRD.getOrDefault(command, List.of()).forEach(w -> all.add(command + " " + w));
              });
        });
    return all;
  }

  /** The command line with as many commands as these arguments need. */
  static CommandLine lineFor(String[] args, CommandContext desk) {
    List<String> words = leadingWords(args);
    CommandLine root = new CommandLine(new Charline().in(desk));
    String wanted = words.isEmpty() ? "" : words.get(0);
    WORDS.keySet().stream()
        .filter(first -> !WORDS.containsKey(wanted) || first.equals(wanted))
        .forEach(first -> root.addSubcommand(first, line(first, words, desk)));
    plain(root);
    root.setUsageHelpWidth(80);
    root.setExpandAtFiles(false); // a note may begin with @
    root.setColorScheme(CommandLine.Help.defaultColorScheme(Ansi.OFF));
    root.setOut(new java.io.PrintWriter(desk.out(), true));
    root.setErr(new java.io.PrintWriter(desk.err(), true));
    return root;
  }

  /** The command line with all its commands, for those who describe it. */
  static CommandLine everything(CommandContext desk) {
    CommandLine root = lineFor(new String[0], desk);
    WORDS.forEach(
        (first, seconds) -> {
          CommandLine group = root.getSubcommands().get(first);
          seconds.forEach(
              second -> group.addSubcommand(second, command(first + " " + second, desk)));
        });
    plain(root);
    root.setUsageHelpWidth(80);
    return root;
  }

  /** Options in the order in which they are declared, and a usage line that fits one line. */
  private static void plain(CommandLine line) {
    line.getCommandSpec().usageMessage().sortOptions(false).abbreviateSynopsis(true);
    line.getSubcommands().values().forEach(Commands::plain);
  }

  private static CommandLine line(String first, List<String> words, CommandContext desk) {
    List<String> seconds = WORDS.get(first);
    if (seconds.isEmpty()) {
      return command(first, desk);
    }
    CommandLine group = new CommandLine(new Group(listed(seconds)).in(desk));
    group.getCommandSpec().usageMessage().header(summary(first));
    String wanted = words.size() > 1 && words.get(0).equals(first) ? words.get(1) : "";
    // Where the first word is only listed, its second words need not be made.
    boolean called = !words.isEmpty() && words.get(0).equals(first);
    seconds.stream()
        .filter(second -> called && (!seconds.contains(wanted) || second.equals(wanted)))
        .forEach(second -> group.addSubcommand(second, command(first + " " + second, words, desk)));
    return group;
  }

  /** A second word with the third one that is called for, where it has such words. */
  private static CommandLine command(String words, List<String> given, CommandContext desk) {
    List<String> thirds = THIRD.getOrDefault(words, List.of());
    if (given.size() < 3 || !thirds.contains(given.get(2))) {
      return command(words, desk);
    }
    // The second word alone would ask for values of its own.
    CommandLine group = new CommandLine(new Group(listed(thirds)).in(desk));
    group.addSubcommand(given.get(2), command(words + " " + given.get(2), desk));
    return group;
  }

  /** The first words that are neither options nor the value of {@code --log}. */
  private static List<String> leadingWords(String[] args) {
    List<String> words = new ArrayList<>();
    for (int i = 0; i < args.length && words.size() < 3; i++) {
      if (args[i].equals("--log")) {
        i++;
      } else if (!args[i].startsWith("-")) {
        words.add(args[i]);
      }
    }
    return words;
  }

  private static String listed(List<String> words) {
    int last = words.size() - 1;
    return String.join(", ", words.subList(0, last)) + " or " + words.get(last);
  }

  private static String summary(String first) {
    return switch (first) {
      case "rig" ->
          "The laser with its head and lens: add, list, show, amend, join, check, upkeep, drift.";
      case "board" -> "The wood that patches are burned on: add, list, show, amend, void, join.";
      case "finish" -> "The coats on the wood: add, list, show, amend, join.";
      case "wood" -> "The woods that this log knows: list, show, add, amend.";
      case "family" -> "The coating families that it knows: list, show, add, amend.";
      case "sample" -> "What coats were tested for: add, list, show, amend, void.";
      case "plan" -> "Planned patches and their codes: list, void.";
      case "patch" -> "Test patches: add, read, show, amend, void.";
      default -> "";
    };
  }

  private static CommandLine command(String words, CommandContext desk) {
    CommandLine line = new CommandLine(made(words, desk).in(desk));
    THIRD
        .getOrDefault(words, List.of())
        .forEach(third -> line.addSubcommand(third, command(words + " " + third, desk)));
    return line;
  }

  private static LogCommand made(String command, CommandContext desk) {
    return switch (command) {
      case "rig add" -> new RigAdd();
      case "rig list" -> new RigList();
      case "rig show" -> new RigShow();
      case "rig amend" -> new RigAmend();
      case "rig join" -> new RigJoin();
      case "rig check" -> new RigCheck();
      case "rig check amend" -> new RigCheckAmend();
      case "rig check void" -> new RigCheckVoid();
      case "rig upkeep" -> new RigUpkeep();
      case "rig upkeep list" -> new RigUpkeepList();
      case "rig upkeep amend" -> new RigUpkeepAmend();
      case "rig upkeep void" -> new RigUpkeepVoid();
      case "rig drift" -> new RigDrift();
      case "board add" -> new BoardAdd();
      case "board list" -> new BoardList();
      case "board show" -> new BoardShow();
      case "board amend" -> new BoardAmend();
      case "board void" -> new BoardVoid();
      case "board join" -> new BoardJoin();
      case "finish add" -> new FinishAdd();
      case "finish list" -> new FinishList();
      case "finish show" -> new FinishShow();
      case "finish amend" -> new FinishAmend();
      case "finish join" -> new FinishJoin();
      case "wood list" -> new WoodList();
      case "wood show" -> new WoodShow();
      case "wood add" -> new WoodAdd();
      case "wood amend" -> new WoodAmend();
      case "family list" -> new FamilyList();
      case "family show" -> new FamilyShow();
      case "family add" -> new FamilyAdd();
      case "family amend" -> new FamilyAmend();
      case "sample add" -> new SampleAdd();
      case "sample list" -> new SampleList();
      case "sample show" -> new SampleShow();
      case "sample amend" -> new SampleAmend();
      case "sample void" -> new SampleVoid();
      case "patch add" -> new PatchAdd();
      case "patch read" -> new PatchRead();
      case "patch show" -> new PatchShow();
      case "patch amend" -> new PatchAmend();
      case "patch void" -> new PatchVoid();
      case "p" -> new PatchNext(words -> Main.asked(words, desk));
      case "plan list" -> new PlanList();
      case "plan void" -> new PlanVoid();
      case "find" -> new Find();
      case "window" -> new Window();
      case "risk" -> new Risk();
      case "compare" -> new Compare();
      case "next" -> new Next();
      case "quote" -> new QuoteJob();
      case "onset" -> new Onset();
      case "removal" -> new Removal();
      case "prior" -> new PriorShow();
      case "sheet" -> new Sheet();
      case "import" -> new Import();
      case "export" -> new Export();
      case "bench" -> new BenchCommand();
      case "merge" -> new MergeLog();
      case "backup" -> new Backup();
      case "check" -> new Check();
      case "completion" -> new Completion(() -> everything(desk));
      case "demo" -> new Demo(words -> Main.again(words, desk));
      default -> throw Refusal.usage("No command is called " + command + ".");
    };
  }
}
