package charline.timing;

import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.log.sheet.RigSheet;
import charline.log.sheet.TrialSheet;
import charline.log.sheet.TrialSheetImporter;
import charline.model.Event;
import charline.model.Fitter;
import charline.model.ModelFit;
import charline.model.Trials;
import charline.stat.inverse.ProfileLimits;
import charline.stat.linear.Design;
import charline.stat.regression.BinomialFit;
import charline.stat.regression.BinomialRegression;
import charline.stat.regression.BinomialSample;
import charline.stat.regression.Estimator;
import charline.trial.Patch;
import charline.trial.Reading;
import charline.trial.Stratum;
import charline.window.Requirements;
import charline.window.RigSetup;
import charline.window.WindowFinder;
import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.Supplier;

/** The statistics against R, each warmed up as a bench that stays open is. */
final class FitTiming {
  private static final Path SCRIPTS = Path.of("src/test/resources/timing").toAbsolutePath();
  private static final int METROPOLIS_STEPS = 20_000;

  private FitTiming() {}

  static List<Timing.Line> lines(Path folder) throws Exception {
    List<Timing.Line> lines = new ArrayList<>(posterior(folder));
    lines.add(firth(folder));
    lines.add(logistic(folder));
    return lines;
  }

  private static double warm(int times, Supplier<?> work) {
    double[] seconds = new double[times];
    for (int i = 0; i < times; i++) {
      seconds[i] = Run.seconds(work);
    }
    Arrays.sort(seconds, times / 2, times); // the second half, when the compiler is done
    return seconds[times / 2 + times / 4];
  }

  private static double[] r(Path folder, String script, String... args) throws Exception {
    List<String> words = new ArrayList<>(List.of("Rscript", SCRIPTS.resolve(script).toString()));
    words.addAll(Arrays.asList(args));
    String[] out = Run.of(folder, words.toArray(String[]::new)).out().strip().split("\n");
    return Arrays.stream(out[out.length - 1].strip().split(" +"))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  private static List<Timing.Line> posterior(Path folder) throws Exception {
    List<Patch> patches;
    OffsetDateTime now = OffsetDateTime.parse("2026-11-01T12:00:00Z");
    try (Logbook log = Logbook.open(folder.resolve("fit.db"), Clock.systemUTC())) {
      RigSheet.read(Path.of("sample-trials/rigs.csv")).addTo(log, Clock.systemUTC(), "Ada");
      new TrialSheetImporter(log, Clock.systemUTC())
          .add(TrialSheet.read(Path.of("sample-trials/latex-on-pine.csv")), false);
      patches = log.patches(Filter.ALL).stream().map(PatchEntry::patch).toList();
    }
    Trials trials = new Trials(Stratum.of(patches.get(0)), patches, false);
    RigSetup bench = RigSetup.of(patches.get(0).rig(), patches, now);
    double whole =
        warm(20, () -> WindowFinder.withDefaults().recommend(trials, bench, Requirements.USUAL));
    double fits =
        warm(
            20,
            () ->
                List.of(
                    Fitter.withDefaults().fit(trials, Event.CHAR),
                    Fitter.withDefaults().fit(trials, Event.CLEARING)));
    ModelFit charFit = Fitter.withDefaults().fit(trials, Event.CHAR);
    ModelFit clearing = Fitter.withDefaults().fit(trials, Event.CLEARING);
    Path data = folder.resolve("patches.csv");
    write(data, patches);
    double[] r = r(folder, "posterior.R", data.toString(), Integer.toString(METROPOLIS_STEPS));
    double ours = Math.min(charFit.effectiveDraws(), clearing.effectiveDraws());
    double equal = r[1] * ours / Math.min(r[2], r[3]);
    String agreement =
        String.format(
            Locale.ROOT,
            "medians of tau %.3f and %.3f, R %.3f and %.3f; effective draws %.0f, R %.0f in %s",
            charFit.tau().median(),
            clearing.tau().median(),
            r[4],
            r[5],
            ours,
            Math.min(r[2], r[3]),
            Timing.shown(r[1]));
    int count = patches.size();
    return List.of(
        new Timing.Line(
            "both posteriors of " + count + " patches",
            fits,
            "the same by Metropolis steps in R, to as many effective draws",
            equal,
            Timing.Goal.faster(100, 30),
            agreement),
        new Timing.Line(
            "both posteriors, all checks and the window of " + count + " patches",
            whole,
            "two logistic fits with a board intercept by glmer, no posterior and no window",
            r[0],
            Timing.Goal.none(8),
            "leaving each patch out in turn for the checks; sampling"));
  }

  /** What each patch says of both events, as the scripts in R read it. */
  static void write(Path file, List<Patch> patches) throws IOException {
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("event,lnd,lnf,board,without,with\n");
      for (Patch patch : patches) {
        for (Event event : Event.values()) {
          int without = 0;
          int with = 0;
          for (Reading reading : patch.readings()) {
            boolean shown =
                event == Event.CHAR
                    ? reading.outcome().charred()
                    : reading.outcome().cleared(false);
            if (shown) {
              with = reading.passes();
              break;
            }
            without = reading.passes();
          }
          out.write(
              String.format(
                  Locale.ROOT,
                  "%s,%s,%s,%s,%d,%d%n",
                  event.name().toLowerCase(Locale.ROOT),
                  Math.log(patch.exposure().doseJoulesPerCm2()),
                  Math.log(patch.exposure().intensity()),
                  patch.board().name(),
                  without,
                  with));
        }
      }
    }
  }

  /** Rows of two covariates and an outcome, by chance, as a sample and as a file. */
  private static BinomialSample sample(Path file, int rows) throws IOException {
    Random random = new Random(rows);
    double[][] x = new double[2][rows];
    int[] y = new int[rows];
    try (BufferedWriter out = Files.newBufferedWriter(file)) {
      out.write("x1,x2,y\n");
      for (int i = 0; i < rows; i++) {
        x[0][i] = random.nextGaussian();
        x[1][i] = random.nextGaussian();
        double eta = -1 + 1.2 * x[0][i] - 0.5 * x[1][i];
        y[i] = random.nextDouble() < 1 / (1 + Math.exp(-eta)) ? 1 : 0;
        out.write(x[0][i] + "," + x[1][i] + "," + y[i] + "\n");
      }
    }
    return BinomialSample.of(Design.withIntercept(List.of("x1", "x2"), x), y);
  }

  private static Timing.Line firth(Path folder) throws Exception {
    Path file = folder.resolve("firth.csv");
    BinomialSample sample = sample(file, 5000);
    BinomialRegression firth = BinomialRegression.withDefaults().with(Estimator.FIRTH_PENALISED);
    double ours = warm(20, () -> ProfileLimits.withDefaults().of((BinomialFit) firth.fit(sample)));
    double[] r = r(folder, "firth.R", file.toString());
    return new Timing.Line(
        "Firth's logistic regression of 5,000 rows with profile limits",
        ours,
        "R, Newton steps in matrix algebra",
        r[0],
        Timing.Goal.none(1),
        "a dozen maximizations per limit, each started where the last one ended and proved to reach"
            + " the maximum; R's may stop elsewhere. "
            + agreement(firth, sample, r));
  }

  private static Timing.Line logistic(Path folder) throws Exception {
    Path file = folder.resolve("logistic.csv");
    BinomialSample sample = sample(file, 1_000_000);
    BinomialRegression plain = BinomialRegression.withDefaults();
    double ours = warm(20, () -> plain.fit(sample));
    double[] r = r(folder, "logistic.R", file.toString());
    return new Timing.Line(
        "logistic regression of 1,000,000 rows",
        ours,
        "R's glm.fit",
        r[0],
        Timing.Goal.faster(10, 5),
        "one exponential per row and step, four steps over all rows. "
            + agreement(plain, sample, r));
  }

  private static String agreement(
      BinomialRegression regression, BinomialSample sample, double[] r) {
    double[] ours = ((BinomialFit) regression.fit(sample)).coefficients();
    double worst = 0;
    for (int j = 0; j < ours.length; j++) {
      worst = Math.max(worst, Math.abs(ours[j] - r[1 + j]));
    }
    return String.format(Locale.ROOT, "Coefficients differ by at most %.1g", worst);
  }
}
