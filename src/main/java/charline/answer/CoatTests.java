package charline.answer;

import charline.exposure.Emission;
import charline.log.Filter;
import charline.log.Logbook;
import charline.log.PatchEntry;
import charline.trial.Board;
import charline.trial.Caution;
import charline.trial.Finish;
import charline.trial.Patch;
import charline.trial.Sample;
import charline.trial.SampleResult;
import charline.trial.SubstanceFacts;
import charline.trial.TestDemand;
import charline.trial.TestDemand.Strictness;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What coats must be tested for, held against the results of samples.
 *
 * <p>A result counts for its finish; one of a whole job for every finish that was burned on boards
 * of that job and of no other. One sample that found something outweighs others that did not: coats
 * differ from place to place.
 */
final class CoatTests {
  private final Logbook log;
  private final List<Sample> samples;
  private final Map<String, SubstanceFacts> substances;
  private Map<UUID, Set<String>> jobs;

  CoatTests(Logbook log) {
    this.log = log;
    samples = log.samples().standing();
    substances =
        log.reference().substances().stream()
            .collect(Collectors.toMap(SubstanceFacts::name, facts -> facts));
  }

  /** What is known of one finish. */
  Precautions of(Finish finish) {
    List<Finish> alone = List.of(finish);
    return new Precautions(log.reference().cautions(finish), tests(alone), bars(alone), List.of());
  }

  Precautions of(List<Patch> patches) {
    record Kind(Finish finish, Board board, Emission emission) {}
    List<Caution> cautions =
        patches.stream()
            .map(p -> new Kind(p.finish(), p.board(), p.rig().emission()))
            .distinct()
            .flatMap(k -> log.reference().cautions(k.finish(), k.board(), k.emission()).stream())
            .distinct()
            .toList();
    List<Finish> finishes = patches.stream().map(Patch::finish).distinct().toList();
    return new Precautions(inOrder(cautions), tests(finishes), bars(finishes), List.of());
  }

  /**
   * Of a family that was not burned yet: it is for those finishes of the log that the beam may go
   * to, or for none where it may go to none of them.
   */
  Precautions of(String family, List<String> woods, List<Board> boards, Emission emission) {
    List<Finish> ofFamily =
        log.finishes().stream().filter(finish -> finish.family().equals(family)).toList();
    List<Finish> open = ofFamily.stream().filter(f -> bars(List.of(f)).isEmpty()).toList();
    List<Finish> about = open.isEmpty() ? ofFamily : open;
    List<Caution> cautions = new ArrayList<>();
    woods.forEach(word -> cautions.addAll(log.reference().cautions(family, word, emission)));
    for (Finish finish : about) {
      cautions.addAll(log.reference().cautions(finish));
      boards.forEach(board -> cautions.addAll(log.reference().cautions(finish, board, emission)));
    }
    List<Caution> all = inOrder(cautions.stream().distinct().toList());
    return about.isEmpty()
        ? new Precautions(all, untested(family), bars(family), List.of())
        : new Precautions(
            all,
            tests(about),
            bars(about),
            bars(ofFamily.stream().filter(finish -> !about.contains(finish)).toList()));
  }

  /** In the order of the log, in which those of several finishes are brought together. */
  private List<Caution> inOrder(List<Caution> cautions) {
    List<Caution> order = log.reference().everyCaution();
    return cautions.stream().sorted((a, b) -> order.indexOf(a) - order.indexOf(b)).toList();
  }

  private List<Tested> untested(String family) {
    return log.reference().demands(family).stream()
        .filter(demand -> demand.strictness() != Strictness.NEVER)
        .map(demand -> new Tested(demand.substance(), Optional.empty(), List.of()))
        .toList();
  }

  private List<NoBeam> bars(String family) {
    return log.reference().demands(family).stream()
        .map(
            demand ->
                switch (demand.strictness()) {
                  case NEVER -> (NoBeam) new NoBeam.Never(demand.substance(), List.of());
                  case FREE_FIRST ->
                      new NoBeam.Unsampled(demand.substance(), List.of(), Optional.empty());
                  default -> null;
                })
        .filter(Objects::nonNull)
        .toList();
  }

  /** What is demanded first, then what was tested besides. */
  private List<Tested> tests(List<Finish> finishes) {
    record Key(String substance, Optional<Sample> sample) {}
    Map<Key, List<String>> found = new LinkedHashMap<>();
    Set<String> substancesInOrder = new LinkedHashSet<>();
    finishes.forEach(f -> asked(f).forEach(d -> substancesInOrder.add(d.substance())));
    finishes.forEach(f -> about(f).forEach(s -> substancesInOrder.add(s.substance())));
    for (String substance : substancesInOrder) {
      for (Finish finish : finishes) {
        Optional<Sample> result = result(finish, substance);
        boolean demanded = asked(finish).stream().anyMatch(d -> d.substance().equals(substance));
        if (demanded || result.isPresent()) {
          found
              .computeIfAbsent(new Key(substance, result), key -> new ArrayList<>())
              .add(finish.name());
        }
      }
    }
    return found.entrySet().stream()
        .map(e -> new Tested(e.getKey().substance(), e.getKey().sample(), e.getValue()))
        .toList();
  }

  /** Demands that a test can meet. */
  private List<TestDemand> asked(Finish finish) {
    return log.reference().demands(finish).stream()
        .filter(demand -> demand.strictness() != Strictness.NEVER)
        .toList();
  }

  private List<NoBeam> bars(List<Finish> finishes) {
    Map<String, List<String>> never = new LinkedHashMap<>();
    List<NoBeam> found = new ArrayList<>();
    Map<String, List<String>> unsampled = new LinkedHashMap<>();
    Map<String, Sample> inconclusive = new LinkedHashMap<>();
    for (Finish finish : finishes) {
      Set<String> passedOver = new LinkedHashSet<>();
      for (TestDemand demand : log.reference().demands(finish)) {
        String substance = demand.substance();
        Optional<Sample> result = result(finish, substance);
        if (demand.strictness() == Strictness.NEVER) {
          never.computeIfAbsent(substance, s -> new ArrayList<>()).add(finish.name());
          passedOver.add(substance);
        } else if (demand.strictness() == Strictness.FREE_FIRST
            && result.filter(s -> s.result() != SampleResult.INCONCLUSIVE).isEmpty()) {
          unsampled.computeIfAbsent(substance, s -> new ArrayList<>()).add(finish.name());
          result.ifPresent(s -> inconclusive.putIfAbsent(substance, s));
        }
      }
      about(finish).stream()
          .map(Sample::substance)
          .distinct()
          .filter(substance -> !passedOver.contains(substance))
          .flatMap(substance -> result(finish, substance).stream())
          .filter(sample -> sample.result() == SampleResult.FOUND)
          .filter(sample -> barring(sample.substance()).isPresent())
          .forEach(
              sample ->
                  found.add(
                      new NoBeam.Found(
                          sample.substance(),
                          finish.name(),
                          sample,
                          substances.get(sample.substance()).foundMeans())));
    }
    List<NoBeam> all = new ArrayList<>();
    never.forEach((substance, names) -> all.add(new NoBeam.Never(substance, names)));
    if (!all.isEmpty()) {
      return all; // no sample would change that
    }
    all.addAll(found);
    unsampled.forEach(
        (substance, names) ->
            all.add(
                new NoBeam.Unsampled(
                    substance, names, Optional.ofNullable(inconclusive.get(substance)))));
    return all;
  }

  private Optional<SubstanceFacts> barring(String substance) {
    return Optional.ofNullable(substances.get(substance)).filter(SubstanceFacts::barsBeam);
  }

  /** The result that counts: what was found, else what is free, else the latest. */
  private Optional<Sample> result(Finish finish, String substance) {
    List<Sample> about =
        about(finish).stream().filter(s -> s.substance().equalsIgnoreCase(substance)).toList();
    return Stream.of(SampleResult.FOUND, SampleResult.FREE, SampleResult.INCONCLUSIVE)
        .flatMap(
            wanted ->
                about.stream()
                    .filter(sample -> sample.result() == wanted)
                    .reduce((earlier, later) -> later)
                    .stream())
        .findFirst();
  }

  private List<Sample> about(Finish finish) {
    return samples.stream()
        .filter(
            sample ->
                sample
                    .finish()
                    .map(own -> own.id().equals(finish.id()))
                    .orElseGet(() -> isOfJob(finish, sample.job().orElseThrow())))
        .toList();
  }

  private boolean isOfJob(Finish finish, String job) {
    return jobs().getOrDefault(finish.id(), Set.of()).equals(Set.of(job.toLowerCase(Locale.ROOT)));
  }

  /** The jobs of the boards that each finish was burned on. */
  private Map<UUID, Set<String>> jobs() {
    if (jobs == null) {
      jobs =
          log.patches(Filter.ALL).stream()
              .map(PatchEntry::patch)
              .collect(
                  Collectors.groupingBy(
                      patch -> patch.finish().id(),
                      Collectors.mapping(
                          patch -> patch.board().job().orElse("").toLowerCase(Locale.ROOT),
                          Collectors.toSet())));
    }
    return jobs;
  }
}
