package charline.stat.regression;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import charline.reference.Expected;
import charline.reference.ReferenceCase;
import charline.reference.Tolerance;
import charline.stat.interval.Bound;
import charline.stat.interval.FiellerSet;
import charline.stat.inverse.Dose;
import charline.stat.inverse.DoseAtRisk;
import charline.stat.inverse.DoseOutcome.NoDose;
import charline.stat.inverse.ProfileLimits;
import charline.stat.linear.Design;
import charline.stat.linear.Term;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Binomial fits against other software and printed tables; sources in each reference folder. */
public class BinomialRegressionReferenceTest {

  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          bliss-1935           | ml_logit            | MAXIMUM_LIKELIHOOD | killed           | exposed |
          bliss-1935           | ml_logit_profile    | MAXIMUM_LIKELIHOOD | killed           | exposed |
          bliss-1935           | firth_logit         | FIRTH_PENALISED    | killed           | exposed |
          dalal-1989           | ml_binary           | MAXIMUM_LIKELIHOOD | any_distress     |         |
          dalal-1989           | ml_grouped          | MAXIMUM_LIKELIHOOD | rings_distressed | rings   |
          dalal-1989           | firth_binary        | FIRTH_PENALISED    | any_distress     |         |
          heinze-2002          | firth               | FIRTH_PENALISED    | HG               |         |
          heinze-2002          | ml_without_NV       | MAXIMUM_LIKELIHOOD | HG               |         |
          foxman-1997          | firth               | FIRTH_PENALISED    | case             |         |
          albert-1984          | complete            | FIRTH_PENALISED    | y_sep            |         |
          albert-1984          | quasi               | FIRTH_PENALISED    | y_quasi          |         |
          albert-1984          | one_event_last      | FIRTH_PENALISED    | y_one            |         |
          albert-1984          | no_event_symmetric  | FIRTH_PENALISED    | y_none           |         |
          albert-1984          | no_event_asymmetric | FIRTH_PENALISED    | y_none           |         |
          albert-1984          | all_events          | FIRTH_PENALISED    | y_all            |         |
          albert-1984          | weak                | FIRTH_PENALISED    | y_weak           |         |
          hosmer-1989          | main                | MAXIMUM_LIKELIHOOD | low              |         |
          hosmer-1989          | ties                | MAXIMUM_LIKELIHOOD | low              |         |
          synthetic-patches-48 | firth_family_A      | FIRTH_PENALISED    | charred          |         | A
          synthetic-patches-48 | firth_family_B      | FIRTH_PENALISED    | charred          |         | B
          synthetic-patches-48 | firth_family_C      | FIRTH_PENALISED    | charred          |         | C
          synthetic-patches-48 | firth_pooled_slopes | FIRTH_PENALISED    | charred          |         |
          synthetic-patches-48 | ml_pooled_slopes    | MAXIMUM_LIKELIHOOD | charred          |         |
          synthetic-patches-120 | firth_family_A      | FIRTH_PENALISED    | charred          |         | A
          synthetic-patches-120 | firth_family_B      | FIRTH_PENALISED    | charred          |         | B
          synthetic-patches-120 | firth_family_C      | FIRTH_PENALISED    | charred          |         | C
          synthetic-patches-120 | firth_pooled_slopes | FIRTH_PENALISED    | charred          |         |
          synthetic-patches-120 | ml_pooled_slopes    | MAXIMUM_LIKELIHOOD | charred          |         |
          """)
  void agrees_with_the_reference(
      String folder, String id, Estimator estimator, String events, String trials, String family) {
    ReferenceCase reference = ReferenceCase.load(folder);
    Expected expected = reference.fit(id);
    BinomialSample sample =
        sample(reference, expected.at("expected").texts("terms"), events, trials, family);

    FitOutcome outcome = BinomialRegression.withDefaults().with(estimator).fit(sample);

    assertThat(outcome).isInstanceOf(BinomialFit.class);
    BinomialFit fit = (BinomialFit) outcome;
    checkFit(reference, expected.at("expected"), fit);
    if (expected.has("profile")) {
      checkFit(reference, expected.at("profile"), fit);
    }
    for (String doses : List.of("ed", "ed05")) {
      if (expected.has(doses)) {
        expected.each(doses).forEach(dose -> checkDose(reference, dose, fit));
      }
    }
    checkPrinted(expected, fit);
    checkRest(reference, expected, fit);
    expected.nothingIsLeft();
  }

  public static BinomialSample sample(
      ReferenceCase reference, List<String> terms, String events, String trials, String family) {
    Design design = reference.design(terms);
    int[] counts = reference.counts(events);
    BinomialSample all =
        trials == null
            ? BinomialSample.of(design, counts)
            : BinomialSample.grouped(design, counts, reference.counts(trials));
    return family == null ? all : all.rows(reference.rowsWhere("family", family));
  }

  private static void checkFit(ReferenceCase reference, Expected expected, BinomialFit fit) {
    Tolerance errors = reference.tolerance("se");
    Tolerance likelihoods = reference.tolerance("loglik_deviance");
    checkIfThere(expected, "coef", fit.coefficients(), reference.tolerance("coef"));
    double[] standardErrors = fit.terms().stream().mapToDouble(Term::standardError).toArray();
    checkIfThere(expected, "se", standardErrors, errors);
    checkIfThere(expected, "se_information", standardErrors, errors);
    checkIfThere(expected, "z", fit.terms().stream().mapToDouble(Term::z).toArray(), errors);
    checkIfThere(
        expected,
        "p",
        fit.terms().stream().mapToDouble(Term::waldProbability).toArray(),
        reference.tolerance("p_values"));
    if (expected.has("vcov")) {
      expected.check("vcov", fit.covariance(), errors);
    }
    checkIfThere(expected, "deviance", fit.deviance(), likelihoods);
    checkIfThere(expected, "null_deviance", fit.nullDeviance(), likelihoods);
    checkIfThere(expected, "pearson_chisq", fit.pearson(), likelihoods);
    checkIfThere(expected, "loglik_kernel", fit.logLikelihood(), likelihoods);
    checkIfThere(expected, "loglik_with_constants", fit.fullLogLikelihood(), likelihoods);
    checkIfThere(expected, "penalised_loglik", fit.objective(), likelihoods);
    checkIfThere(expected, "aic", fit.aic(), likelihoods);
    checkIfThere(expected, "df_residual", fit.residualDegreesOfFreedom(), Tolerance.EXACT);
    checkIfThere(expected, "df_null", fit.sample().rowCount() - 1, Tolerance.EXACT);
    checkProfile(reference, expected, fit);
    if (expected.has("link")) {
      assertThat(expected.text("link")).isEqualTo("logit");
    }
    if (expected.has("ed")) {
      expected.each("ed").forEach(dose -> checkDose(reference, dose, fit));
    }
    expected.skip("asked for by the design", "terms");
    expected.skip("how far the reference itself is from a zero slope", "max_abs_score_at_solution");
    expected.nothingIsLeft();
  }

  private static void checkProfile(ReferenceCase reference, Expected expected, BinomialFit fit) {
    String kind = expected.has("profile_penalised_ci95_lower") ? "profile_penalised" : "profile";
    String ratio = kind.equals("profile") ? "lr" : "penalised_lr";
    if (!expected.has(kind + "_ci95_lower")) {
      return;
    }
    List<ProfileLimits.Profiled> profiled = ProfileLimits.withDefaults().of(fit);
    Tolerance limits = reference.tolerance("profile_limits");
    expected.check(
        kind + "_ci95_lower",
        profiled.stream().mapToDouble(p -> finite(p.interval().lower())).toArray(),
        limits);
    expected.check(
        kind + "_ci95_upper",
        profiled.stream().mapToDouble(p -> finite(p.interval().upper())).toArray(),
        limits);
    expected.check(
        ratio + "_chisq",
        profiled.stream().mapToDouble(ProfileLimits.Profiled::likelihoodRatio).toArray(),
        reference.tolerance("loglik_deviance"));
    expected.check(
        ratio + "_p",
        profiled.stream().mapToDouble(ProfileLimits.Profiled::probability).toArray(),
        reference.tolerance("p_values"));
  }

  private static void checkDose(ReferenceCase reference, Expected expected, BinomialFit fit) {
    Tolerance tolerance = reference.tolerance("ed").orWithin(1e-6);
    DoseAtRisk question = question(expected, fit);
    Dose oneSided = (Dose) question.withConfidence(0.90).estimate(fit);
    expected.check("estimate", oneSided.estimate(), tolerance);
    expected.check("se_delta", oneSided.deltaStandardError(), tolerance);
    if (expected.has("slope_sign")) {
      expected.check("slope_sign", Math.signum(oneSided.slope()), Tolerance.EXACT);
    }
    if (expected.has("lr_chisq_slope_zero")) {
      expected.check(
          "lr_chisq_slope_zero",
          oneSided.dropWithoutSlope(),
          reference.tolerance("loglik_deviance"));
      expected.check("delta_lower_one_sided_95", finite(oneSided.delta().lower()), tolerance);
      Dose twoSided = (Dose) question.withConfidence(0.95).estimate(fit);
      checkBound(expected, "profile_lower_one_sided_95", oneSided.profile().lower(), tolerance);
      checkBound(expected, "profile_upper_one_sided_95", oneSided.profile().upper(), tolerance);
      checkBound(expected, "profile_lower_two_sided_95", twoSided.profile().lower(), tolerance);
      checkBound(expected, "profile_upper_two_sided_95", twoSided.profile().upper(), tolerance);
      checkFieller(expected.at("fieller_one_sided_95"), oneSided.fieller(), tolerance);
    } else {
      Dose twoSided = (Dose) question.withConfidence(0.95).estimate(fit);
      checkFieller(expected.at("fieller_two_sided_95"), twoSided.fieller(), tolerance);
    }
    expected.skip("the question itself", "definition", "family", "risk", "x_column");
    expected.nothingIsLeft();
  }

  /** The question is in the file: column, risk, family; log10_pulses is 1 where it is a term. */
  private static DoseAtRisk question(Expected expected, BinomialFit fit) {
    List<String> terms = fit.sample().design().names();
    String column = expected.has("x_column") ? expected.text("x_column") : terms.get(1);
    DoseAtRisk question = DoseAtRisk.of(column, expected.number("risk"));
    for (String term : terms) {
      if (term.startsWith("family")) {
        boolean own = term.equals("family" + expected.text("family"));
        question = question.given(term, own ? 1 : 0);
      } else if (term.equals("log10_pulses")) {
        question = question.given(term, 1);
      }
    }
    return question;
  }

  private static void checkBound(Expected expected, String key, Bound bound, Tolerance tolerance) {
    if (expected.path().startsWith("albert-1984/weak") && key.startsWith("profile_upper")) {
      expected.skip("stepped over, see SOURCE.md; by brute force below", key, key + "_status");
      return;
    }
    String status = expected.text(key + "_status");
    assertThat(bound instanceof Bound.At ? "finite" : "unbounded").as(key).isEqualTo(status);
    if (bound instanceof Bound.At at) {
      expected.check(key, at.value(), tolerance);
    } else {
      expected.skip("null for unbounded", key);
    }
  }

  public static void checkFieller(Expected expected, FiellerSet set, Tolerance tolerance) {
    expected.check("g", set.g(), tolerance);
    String status = expected.text("status");
    if (set instanceof FiellerSet.Finite finite) {
      assertThat(status).isEqualTo("finite");
      expected.check("lower", finite.lower(), tolerance);
      expected.check("upper", finite.upper(), tolerance);
    } else {
      expected.skip("null where there is no finite interval", "lower", "upper");
      assertThat(status)
          .isEqualTo(set instanceof FiellerSet.Exclusive ? "exclusive" : "whole_line");
      if (expected.has("exclusive_roots")) {
        FiellerSet.Exclusive exclusive = (FiellerSet.Exclusive) set;
        expected.check(
            "exclusive_roots", new double[] {exclusive.below(), exclusive.above()}, tolerance);
      }
    }
    expected.skip("Student's t is inside the set", "t");
    expected.nothingIsLeft();
  }

  /** Values as printed, to half a unit in the last printed digit. */
  private static void checkPrinted(Expected expected, BinomialFit fit) {
    if (expected.has("published")) {
      Expected printed = expected.at("published");
      Tolerance digits = new Tolerance(1e-5, 5e-7); // single precision in the printing program
      if (printed.text("where").startsWith("R summary")) {
        digits = Tolerance.asPrinted(4);
      }
      printed.check("coef", fit.coefficients(), digits);
      if (printed.has("se")) {
        double[] errors = fit.terms().stream().mapToDouble(Term::standardError).toArray();
        printed.check("se", errors, digits);
      }
      if (printed.has("deviance")) {
        printed.check("deviance", fit.deviance(), Tolerance.asPrinted(6));
      }
      printed.skip("the profile limits are compared with more digits", "ci95_lower", "ci95_upper");
      printed.skip("the order of the terms", "order");
      printed.nothingIsLeft();
    }
    expected.skip("recalled, not seen in a document", "published_from_memory");
    expected.skip("about the reference", "max_abs_difference_to_published");
  }

  private static void checkRest(ReferenceCase reference, Expected expected, BinomialFit fit) {
    if (expected.has("ml_separated")) {
      assertThat(fit.separation() != Separation.NONE).isEqualTo(expected.flag("ml_separated"));
    }
    if (expected.has("n")) {
      expected.check("n", fit.sample().rowCount(), Tolerance.EXACT);
    }
    if (expected.has("events")) {
      expected.check("events", fit.sample().totalEvents(), Tolerance.EXACT);
    }
    if (expected.has("df_residual")) {
      expected.check("df_residual", fit.residualDegreesOfFreedom(), Tolerance.EXACT);
      expected.check("deviance", fit.deviance(), reference.tolerance("loglik_deviance"));
    }
    if (expected.has("predicted_risk_at_31F")) {
      expected.check("predicted_risk_at_31F", fit.riskAt(1, 31), reference.tolerance("coef"));
    }
    if (expected.has("distinct_risks")) {
      long distinct = Arrays.stream(fit.risks()).distinct().count();
      expected.check("distinct_risks", distinct, Tolerance.EXACT);
    }
    expected.skip("words", "id", "model", "terms", "response", "subset");
    expected.skip("no dose where the slope is 0", "ed05");
    expected.skip(
        "in charline.stat.check",
        "goodness_of_fit",
        "goodness_of_fit_of_firth_risks",
        "leave_one_out",
        "rank_split");
  }

  private static void checkIfThere(
      Expected expected, String key, double actual, Tolerance tolerance) {
    if (expected.has(key)) {
      expected.check(key, actual, tolerance);
    }
  }

  private static void checkIfThere(
      Expected expected, String key, double[] actual, Tolerance tolerance) {
    if (expected.has(key)) {
      expected.check(key, actual, tolerance);
    }
  }

  private static double finite(Bound bound) {
    assertThat(bound).isInstanceOf(Bound.At.class);
    return ((Bound.At) bound).value();
  }

  /** By symmetry the slope is 0; a dose would divide by its rounding error. */
  @Test
  void no_dose_is_made_up_where_the_slope_is_zero() {
    ReferenceCase reference = ReferenceCase.load("albert-1984");
    BinomialSample sample = sample(reference, List.of("(Intercept)", "x"), "y_none", null, null);
    BinomialFit fit =
        (BinomialFit) BinomialRegression.withDefaults().with(Estimator.FIRTH_PENALISED).fit(sample);

    assertThat(DoseAtRisk.of("x", 0.05).estimate(fit))
        .isEqualTo(
            new NoDose(
                "The risk must change with 'x' for a dose to exist, but the fitted slope is 0;"
                    + " try doses further apart."));
  }

  /**
   * The estimate is -63.8, and doses between 0.5 and 9.6 are rejected, as three of eight rows there
   * have the event. A walk in long steps passes over them; these limits come from a grid over the
   * slope at each dose, which shares nothing with the code under test.
   */
  @ParameterizedTest
  @CsvSource({"0.90, 0.4724532145", "0.95, 1.5003692933"})
  void a_stretch_of_rejected_doses_is_not_stepped_over(double confidence, double upper) {
    ReferenceCase reference = ReferenceCase.load("albert-1984");
    BinomialSample sample = sample(reference, List.of("(Intercept)", "x"), "y_weak", null, null);
    BinomialFit fit =
        (BinomialFit) BinomialRegression.withDefaults().with(Estimator.FIRTH_PENALISED).fit(sample);

    Dose dose = (Dose) DoseAtRisk.of("x", 0.05).withConfidence(confidence).estimate(fit);

    assertThat(finite(dose.profile().upper())).isCloseTo(upper, within(1e-6));
    assertThat(dose.profile().lower()).isEqualTo(Bound.unbounded());
  }

  /** Albert and Anderson (1984): kinds of separation, named with the coefficients that run off. */
  @ParameterizedTest(name = "{0} {1}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          albert-1984 | y_sep   | x              | COMPLETE       | -(Intercept), +x
          albert-1984 | y_quasi | x_tied         | QUASI_COMPLETE | -(Intercept), +x_tied
          albert-1984 | y_one   | x              | COMPLETE       | -(Intercept), +x
          heinze-2002 | HG      | NV;PI;EH       | QUASI_COMPLETE | +NV
          foxman-1997 | case    | age;oc;vic;vicl;vis;dia | QUASI_COMPLETE | +dia
          """)
  void separation_is_named_instead_of_a_diverged_number(
      String folder, String events, String covariates, Separation kind, String running) {
    ReferenceCase reference = ReferenceCase.load(folder);
    List<String> terms =
        IntStream.rangeClosed(0, covariates.split(";").length)
            .mapToObj(j -> j == 0 ? "(Intercept)" : covariates.split(";")[j - 1])
            .toList();

    FitOutcome outcome =
        BinomialRegression.withDefaults().fit(sample(reference, terms, events, null, null));

    assertThat(outcome).isInstanceOf(Separated.class);
    assertThat(((Separated) outcome).kind()).isEqualTo(kind);
    assertThat(String.join(", ", ((Separated) outcome).terms())).isEqualTo(running);
  }
}
