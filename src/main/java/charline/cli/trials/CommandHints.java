package charline.cli.trials;

import static charline.quantity.Figures.plain;

import charline.trial.Stratum;
import charline.wording.FaceHints;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The commands and options that do what an answer suggests. */
final class CommandHints implements FaceHints {
  static final FaceHints HINTS = new CommandHints();

  private CommandHints() {}

  @Override
  public Optional<String> borrow() {
    return Optional.of("Add --borrow to use them as a prior.");
  }

  @Override
  public Optional<String> pool(List<String> woods) {
    return Optional.of(
        "Pool %s with %s.".formatted(woods.size() == 1 ? "it" : "them", options(woods)));
  }

  @Override
  public Optional<String> confirm(Stratum stratum, String rig) {
    List<String> woods = stratum.woods();
    String wood = woods.isEmpty() ? Stratum.ANY_WOOD : woods.get(0);
    String others = woods.size() < 2 ? "" : " " + options(woods.subList(1, woods.size()));
    return Optional.of(
        "Choose them with `charline next %s %s%s --rig %s`."
            .formatted(quoted(stratum.family()), quoted(wood), others, quoted(rig)));
  }

  @Override
  public Optional<String> forSpot(double millimetres) {
    return Optional.of("Ask with --at spot=%smm.".formatted(plain(millimetres)));
  }

  private static String options(List<String> woods) {
    return woods.stream()
        .map(wood -> "--with-wood " + quoted(wood))
        .collect(Collectors.joining(" "));
  }

  private static String quoted(String word) {
    return word.contains(" ") ? '"' + word + '"' : word;
  }
}
