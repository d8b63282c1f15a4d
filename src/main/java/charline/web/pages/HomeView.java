package charline.web.pages;

import charline.answer.Precautions;
import charline.trial.Caution;
import charline.trial.Patch;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * What Home shows at once: where the person was.
 *
 * @param day the day of the latest patches, in words
 * @param latest the patches of that day, the latest first
 * @param more how many more there are of that day
 * @param planned how many patches are planned and not burned, in words; blank for none
 * @param bench what lies on the bench by the latest patch, if there is one
 * @param missing what must be set up before anything can be recorded, if so
 */
public record HomeView(
    String day,
    List<Patch> latest,
    int more,
    String planned,
    Optional<Bench> bench,
    Optional<String> missing) {
  private static final int SHOWN = 4;
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

  /**
   * What lies on the bench.
   *
   * @param finish its name
   * @param link page of the finish
   * @param poison poison and fire in short, blank if nothing is known of either
   * @param cautions in full
   */
  public record Bench(String finish, String link, String poison, List<Caution> cautions) {
    static Bench of(Patch latest, Precautions known) {
      return new Bench(
          latest.finish().name(),
          "/finish?name=" + Links.escaped(latest.finish().name()),
          PoisonLine.of(known),
          known.cautions());
    }
  }

  static HomeView of(
      List<Patch> patches,
      LocalDate today,
      int planned,
      Optional<Bench> bench,
      Optional<String> missing) {
    Comparator<Patch> byTime = Comparator.comparing(p -> p.burnedAt().toInstant());
    Optional<Patch> last = patches.stream().max(byTime);
    List<Patch> ofDay =
        last.map(
                l ->
                    patches.stream()
                        .filter(p -> day(p).equals(day(l)))
                        .sorted(byTime.reversed())
                        .toList())
            .orElse(List.of());
    return new HomeView(
        last.map(l -> words(day(l), today)).orElse(""),
        ofDay.stream().limit(SHOWN).toList(),
        Math.max(0, ofDay.size() - SHOWN),
        planned == 0
            ? ""
            : planned == 1 ? "One patch is planned" : planned + " patches are planned",
        bench,
        missing);
  }

  private static LocalDate day(Patch patch) {
    return patch.burnedAt().toLocalDate();
  }

  private static String words(LocalDate day, LocalDate today) {
    return day.equals(today)
        ? "Today"
        : day.equals(today.minusDays(1)) ? "Yesterday" : "Last, on " + DAY.format(day);
  }
}
