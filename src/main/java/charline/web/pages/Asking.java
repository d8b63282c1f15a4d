package charline.web.pages;

import charline.answer.FixedKnobs;
import charline.answer.Light;
import charline.answer.TrialQuestion;
import charline.exposure.Figure;
import charline.model.way.Coating;
import charline.model.way.Way;
import charline.quantity.Figures;
import charline.quantity.Invariant;
import charline.quantity.Measure;
import charline.quantity.Measure.Quantity;
import charline.refusal.Missing;
import charline.refusal.Refusal;
import charline.trial.Knob;
import charline.trial.Place;
import charline.trial.Stratum;
import charline.trial.Tone;
import charline.web.live.LiveModels;
import charline.web.live.PriorTexts;
import charline.window.JobLimit;
import charline.window.Requirements;
import charline.window.Strokes;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Questions as the address of a page asks them, and as an address that asks them again. */
record Asking(LiveModels models, PriorTexts priors) {
  /** Knobs that may stay fixed across a window. */
  static final List<Knob> FIXED =
      List.of(Knob.SPOT, Knob.RATE, Knob.PULSE, Knob.WIDTH, Knob.SPACING);

  private static final List<String> LIMITS =
      List.of(
          "risk",
          "confidence",
          "clear",
          "tint",
          "overlap",
          "job",
          "jobrisk",
          "rig",
          "spot",
          "rep",
          "pulse",
          "width",
          "spacing",
          "prior",
          "tone",
          "thickness",
          "figure",
          "place",
          "borrow",
          "piece");

  /** What the address asks, but for the knobs that it fixes. */
  TrialQuestion question(Context ctx) {
    TrialQuestion question = asked(ctx);
    String code = text(ctx, "light");
    return models.shelf().strata().keySet().stream()
        .map(Light::of)
        .filter(light -> light.code().equals(code))
        .findAny()
        .map(question::with)
        .orElse(question);
  }

  private TrialQuestion asked(Context ctx) {
    TrialQuestion question =
        TrialQuestion.about(text(ctx, "family"), text(ctx, "wood"))
            .with(
                new Requirements(
                    share(ctx, "risk", Requirements.USUAL.charRisk()),
                    share(ctx, "confidence", Requirements.USUAL.confidence()),
                    share(ctx, "clear", Requirements.USUAL.clearChance()),
                    "yes".equals(ctx.queryParam("tint"))))
            .with(new Strokes(share(ctx, "overlap", Strokes.USUAL.overlap())))
            .with(way(ctx))
            .borrowing("yes".equals(ctx.queryParam("borrow")));
    String prior = text(ctx, "prior");
    if (!prior.isEmpty()) {
      question = question.with(priors.of(prior));
    }
    String rig = text(ctx, "rig");
    if (!rig.isEmpty()) {
      question = question.onRig(rig);
    }
    String piece = text(ctx, "piece");
    if (!piece.isEmpty()) {
      question = question.forPiece(piece);
    }
    String area = text(ctx, "job");
    boolean limited = !text(ctx, "jobrisk").isEmpty();
    if (area.isEmpty()) {
      if (limited) {
        throw Refusal.usage("A limit for the whole job needs the job's area; enter it in m².");
      }
      return question;
    }
    return question.with(
        new JobLimit(
            Measure.parse(area, Quantity.SURFACE).value(),
            limited ? OptionalDouble.of(share(ctx, "jobrisk", 0)) : OptionalDouble.empty()));
  }

  private static Way way(Context ctx) {
    String figure = text(ctx, "figure");
    String place = text(ctx, "place");
    return Way.UNSAID
        .with(coat(ctx))
        .with(figure.isEmpty() ? Optional.empty() : Optional.of(Figure.ofWord(figure)))
        .with(place.isEmpty() ? Place.FACE : Place.ofWord(place));
  }

  private static Coating coat(Context ctx) {
    String tone = text(ctx, "tone");
    String thickness = text(ctx, "thickness");
    return new Coating(
        tone.isEmpty() ? Optional.empty() : Optional.of(Tone.ofWord(tone)),
        thickness.isEmpty()
            ? OptionalDouble.empty()
            : OptionalDouble.of(Measure.parse(thickness, Quantity.THICKNESS).value()));
  }

  /** A text of the address, blank where there is none. */
  static String text(Context ctx, String name) {
    String text = ctx.queryParam(name);
    return text == null ? "" : text.strip();
  }

  /** A share of the address, typed in percent. */
  static double share(Context ctx, String name, double usual) {
    String text = text(ctx, name);
    if (text.isEmpty()) {
      return usual;
    }
    if (!text.matches("\\d{1,2}([.,]\\d{1,6})?\\s*%?")) {
      throw Refusal.usage("A share must be a percentage such as 5, not \"%s\".".formatted(text));
    }
    return Measure.parse(text, Quantity.SHARE).value() / 100;
  }

  /** The knobs that the address fixes. */
  static FixedKnobs knobs(Context ctx) {
    Map<Knob, Double> values = new EnumMap<>(Knob.class);
    for (Knob knob : FIXED) {
      String text = text(ctx, knob.key());
      if (!text.isEmpty()) {
        try {
          double value = Measure.parse(text, knob.quantity()).value();
          values.put(knob, Invariant.positive(knob.words(), value, knob.unit()));
        } catch (Refusal e) {
          throw knob == Knob.WIDTH ? Refusal.lacking(Missing.SCAN_WIDTH, e.getMessage()) : e;
        }
      }
    }
    return new FixedKnobs(values);
  }

  /** What else the address asks, so that a choice of light loses none of it. */
  static String rest(Context ctx) {
    StringBuilder rest = new StringBuilder();
    Stream.of(LIMITS, QuoteForm.names(), List.of("by"))
        .flatMap(List::stream)
        .forEach(
            name -> {
              String value = text(ctx, name);
              if (!value.isEmpty()) {
                rest.append('&').append(name).append('=').append(Links.escaped(value));
              }
            });
    return rest.toString();
  }

  /** The part of an address that asks the same of a stratum again. */
  static String query(Stratum stratum, TrialQuestion question) {
    Requirements asked = question.asked();
    List<String> parts = new ArrayList<>();
    parts.add(Links.of(stratum));
    parts.add("risk=" + percent(asked.charRisk()));
    parts.add("confidence=" + percent(asked.confidence()));
    parts.add("clear=" + percent(asked.clearChance()));
    if (asked.acceptTint()) {
      parts.add("tint=yes");
    }
    parts.add("overlap=" + percent(question.strokes().overlap()));
    question
        .job()
        .ifPresent(
            job -> {
              parts.add("job=" + Figures.shortest(job.areaSquareMetres()));
              job.charRisk().ifPresent(risk -> parts.add("jobrisk=" + percent(risk)));
            });
    question.rig().ifPresent(rig -> parts.add("rig=" + Links.escaped(rig)));
    for (Knob knob : FIXED) {
      question
          .fixed()
          .of(knob)
          .ifPresent(value -> parts.add(knob.key() + "=" + Figures.shortest(value)));
    }
    question.priors().file().ifPresent(name -> parts.add("prior=" + name));
    question.way().coat().tone().ifPresent(tone -> parts.add("tone=" + tone.word()));
    question
        .way()
        .coat()
        .thicknessMicrometres()
        .ifPresent(thickness -> parts.add("thickness=" + Figures.shortest(thickness)));
    question.way().figure().ifPresent(f -> parts.add("figure=" + Links.escaped(f.word())));
    question
        .way()
        .place()
        .filter(place -> place != Place.FACE)
        .ifPresent(place -> parts.add("place=" + Links.escaped(place.word())));
    if (question.borrow()) {
      parts.add("borrow=yes");
    }
    question.piece().ifPresent(piece -> parts.add("piece=" + Links.escaped(piece)));
    return String.join("&", parts);
  }

  /** A share as it is typed, in percent. */
  static String percent(double share) {
    return Figures.shortest(100 * share);
  }
}
