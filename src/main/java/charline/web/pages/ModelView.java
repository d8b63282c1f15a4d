package charline.web.pages;

import charline.answer.ModelAnswer;
import charline.answer.RemovalAnswer;
import charline.model.Event;
import charline.paper.ChanceChart;
import charline.trial.Reading;
import charline.trial.Stratum;
import charline.wording.AblationText;
import charline.wording.CoatContradictionText;
import charline.wording.ModelText;
import charline.wording.RemovalRateText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * One model as the page shows it: in plain words, as a drawing, and in full.
 *
 * @param event char or clearing
 * @param behind that a newer model is being computed, if so
 * @param meaning what it says in plain words
 * @param basis what it rests on
 * @param trouble what cannot all be true of the coat
 * @param chart chance against dose
 * @param choices numbers of passes to draw it for, each with its address
 * @param rates passes to clear at settings that were tried; none for char
 * @param counted what their area rate counts
 * @param full everything, as the command line prints it
 * @param query part of the address that asks the same again
 */
public record ModelView(
    Stratum stratum,
    Event event,
    Optional<String> behind,
    List<String> meaning,
    List<String> basis,
    List<String> trouble,
    ChanceChart chart,
    List<Choice> choices,
    List<RemovalRateText.Row> rates,
    String counted,
    String full,
    LimitFields limits,
    String query) {
  private static final int MOST_CHOICES = 8;

  /** A number of passes to choose. */
  public record Choice(int passes, String link, boolean chosen) {}

  /** Whether the model is about char. */
  public boolean ofChar() {
    return event == Event.CHAR;
  }

  static ModelView of(
      ModelAnswer answer,
      Optional<RemovalAnswer> removal,
      boolean renewing,
      int passes,
      LimitFields limits) {
    Event event = answer.fit().event();
    Stratum stratum = answer.subject().trials().stratum();
    String query = Asking.query(stratum, answer.subject().question());
    ModelText words = ModelText.of(answer);
    String path = event == Event.CHAR ? "/onset?" : "/removal?";
    return new ModelView(
        stratum,
        event,
        renewing ? Optional.of("A newer model is being computed.") : Optional.empty(),
        words.meaning(),
        words.basis(),
        removal
            .map(r -> r.contradictions().stream().map(CoatContradictionText::of).toList())
            .orElse(List.of()),
        ChanceChart.of(answer, passes),
        passesTried(answer).stream()
            .map(n -> new Choice(n, path + query + "&passes=" + n, n == passes))
            .toList(),
        removal.map(r -> RemovalRateText.rows(r.rates())).orElse(List.of()),
        RemovalRateText.counted(answer.subject().question().strokes()),
        words.text()
            + removal
                .map(
                    r ->
                        "\n"
                            + RemovalRateText.text(r.rates(), answer.subject())
                            + CoatContradictionText.paragraphs(r.contradictions())
                            + AblationText.of(r.ablation()))
                .orElse(""),
        limits,
        query);
  }

  private static List<Integer> passesTried(ModelAnswer answer) {
    TreeSet<Integer> tried =
        answer.subject().trials().patches().stream()
            .flatMap(p -> p.readings().stream())
            .map(Reading::passes)
            .collect(Collectors.toCollection(TreeSet::new));
    tried.add(1);
    return new ArrayList<>(tried).subList(0, Math.min(MOST_CHOICES, tried.size()));
  }
}
