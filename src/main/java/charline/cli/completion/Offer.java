package charline.cli.completion;

import charline.exposure.Emission;
import charline.exposure.SpotDefinition;
import charline.log.names.NameKind;
import charline.trial.Mark;
import charline.trial.Place;
import charline.trial.SampleResult;
import charline.trial.Tone;
import charline.trial.WoodForm;
import charline.trial.WoodPart;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;

/**
 * What is offered for the value of an option or for an argument: {@code names board}, {@code words
 * pulsed|cw}, {@code file}, {@code folder}, or {@code value} for what nobody can guess.
 */
final class Offer {
  private static final String VALUE = "value";
  private static final String DAYS = "words today|yesterday|last week|last month";

  /** By the name of the option, whatever the command. */
  private static final Map<String, String> BY_OPTION = new HashMap<>();

  static {
    names(NameKind.RIG, "--rig");
    names(NameKind.BOARD, "--board", "--piece");
    names(NameKind.FINISH, "--finish");
    names(NameKind.WOOD, "--wood", "--with-wood");
    names(NameKind.FAMILY, "--family", "--coat");
    names(NameKind.PERSON, "--by", "--burned-by", "--judged-by");
    names(NameKind.JOB, "--job");
    names(NameKind.PLAN, "--plan");
    names(NameKind.SUBSTANCE, "--substance");
    words("--kind", Emission.values(), Emission::word);
    words("--light", Emission.values(), Emission::word);
    words("--spot-means", SpotDefinition.values(), SpotDefinition::word);
    words("--form", WoodForm.values(), WoodForm::word);
    words("--outcome", Mark.values(), Mark::word);
    words("--tone", Tone.values(), Tone::word);
    words("--result", SampleResult.values(), SampleResult::word);
    words("--lead", SampleResult.values(), SampleResult::word);
    words("--place", Place.values(), Place::word);
    words("--part", WoodPart.values(), WoodPart::word);
    BY_OPTION.put("--figure", "words line|circle|spiral|ring|zigzag");
    List.of("--soot", "--wetted", "--air", "--extraction")
        .forEach(option -> BY_OPTION.put(option, "words yes|no"));
    BY_OPTION.put("--what", "words window-cleaned|window-changed|lens|coolant|service");
    BY_OPTION.put("--take", "words here|there");
    BY_OPTION.put("--paper", "words a4|letter|any");
    BY_OPTION.put("--classical", "words ml|firth|mixed|aft");
    BY_OPTION.put("--extra", "words note|skip");
    BY_OPTION.put("--dates", "words day-first|month-first");
    BY_OPTION.put("--sort", "words newest|oldest|dose|power|speed|passes|depth");
    BY_OPTION.put("--since", DAYS);
    BY_OPTION.put("--until", DAYS);
  }

  private Offer() {}

  private static void names(NameKind kind, String... options) {
    for (String option : options) {
      BY_OPTION.put(option, of(kind));
    }
  }

  private static <E> void words(String option, E[] values, Function<E, String> word) {
    BY_OPTION.put(
        option, "words " + Arrays.stream(values).map(word).collect(Collectors.joining("|")));
  }

  private static String of(NameKind kind) {
    return "names " + kind.word();
  }

  /**
   * What is offered for the value of an option.
   *
   * @param command its words, as "patch add"
   * @return empty for an option without a value
   */
  static String ofOption(String command, OptionSpec option) {
    if (option.arity().max() == 0) {
      return "";
    }
    String label = label(option);
    return switch (option.longestName()) {
      case "--into" -> ofThing(command);
      case "--like" -> label.equals("CODE") ? of(NameKind.PATCH) : ofThing(command);
      case "--on" -> label.equals("WHERE") ? "words offcut|piece" : "words today|yesterday";
      case "--at" -> label.equals("TIME") ? "words yesterday" : VALUE;
      default ->
          BY_OPTION.getOrDefault(
              option.longestName(),
              label.startsWith("FILE") ? "file" : label.equals("FOLDER") ? "folder" : VALUE);
    };
  }

  /** What is offered for an argument, by its place among them. */
  static String ofArgument(String command, ArgSpec argument, int place) {
    return switch (label(argument)) {
      case "NAME" -> command.endsWith(" add") ? VALUE : ofThing(command);
      case "CODE" -> ofThing(command);
      case "WOOD" -> of(NameKind.WOOD);
      case "FAMILY" -> of(NameKind.FAMILY);
      case "FAMILY WOOD" -> of(place == 0 ? NameKind.FAMILY : NameKind.WOOD);
      case "WORDS" -> of(NameKind.WORD);
      case "SUBSTANCE" -> of(NameKind.SUBSTANCE);
      case "RESULT" -> BY_OPTION.get("--result");
      case "CHANGE" -> BY_OPTION.get("--outcome");
      case "CHECK", "UPKEEP" -> "words last";
      case "SHELL" -> "words bash|zsh|fish";
      case "FILE", "FILE.csv", "OTHER.db" -> "file";
      default -> VALUE;
    };
  }

  /** Names of what the first word of a command is about. */
  private static String ofThing(String command) {
    String thing = command.split(" ")[0];
    return Arrays.stream(NameKind.values())
        .filter(kind -> kind.word().equals(thing))
        .findFirst()
        .map(Offer::of)
        .orElse(VALUE);
  }

  private static String label(ArgSpec arg) {
    return arg.paramLabel();
  }
}
