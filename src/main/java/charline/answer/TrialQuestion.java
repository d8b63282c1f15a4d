package charline.answer;

import charline.model.way.Coating;
import charline.model.way.Way;
import charline.trial.Stratum;
import charline.window.JobLimit;
import charline.window.Requirements;
import charline.window.Strokes;
import java.util.Optional;

/**
 * A question about trials, from either face.
 *
 * @param about coating family and wood; empty where every stratum is asked about
 * @param rig name of the rig that the answer is for; empty for the one most patches were burned on
 * @param light kind of light, where trials with several kinds would do
 * @param fixed knobs that the question fixes
 * @param asked what a window has to keep, and whether a tint counts as cleared
 * @param way coat, figure, place and the like that the answer is for, as far as they are asked; its
 *     rig and its pulses are those of the bench
 * @param priors what is likely before any patch
 * @param borrow whether other trials of the log lend what they know
 * @param strokes how strokes are laid over the work
 * @param job a job whose risk is asked for
 * @param piece name of the board that the answer is for; empty for a board not seen yet
 */
public record TrialQuestion(
    Optional<FamilyAndWood> about,
    Optional<String> rig,
    Optional<Light> light,
    FixedKnobs fixed,
    Requirements asked,
    Way way,
    Priors priors,
    boolean borrow,
    Strokes strokes,
    Optional<JobLimit> job,
    Optional<String> piece) {

  /** Every stratum, with nothing said of the rest. */
  public static final TrialQuestion OF_ALL =
      new TrialQuestion(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          FixedKnobs.NONE,
          Requirements.USUAL,
          Way.UNSAID,
          Priors.USUAL,
          false,
          Strokes.USUAL,
          Optional.empty(),
          Optional.empty());

  /** The trials of one coating family on one wood, or on {@link Stratum#ANY_WOOD}. */
  public static TrialQuestion about(String family, String wood) {
    return OF_ALL.about(new FamilyAndWood(family, wood));
  }

  /** The same about one coating family and wood. */
  public TrialQuestion about(FamilyAndWood other) {
    return new TrialQuestion(
        Optional.of(other), rig, light, fixed, asked, way, priors, borrow, strokes, job, piece);
  }

  /** The same for a rig. */
  public TrialQuestion onRig(String name) {
    return new TrialQuestion(
        about, Optional.of(name), light, fixed, asked, way, priors, borrow, strokes, job, piece);
  }

  /** The same with one kind of light. */
  public TrialQuestion with(Light other) {
    return new TrialQuestion(
        about, rig, Optional.of(other), fixed, asked, way, priors, borrow, strokes, job, piece);
  }

  /** The same with knobs fixed. */
  public TrialQuestion with(FixedKnobs other) {
    return new TrialQuestion(
        about, rig, light, other, asked, way, priors, borrow, strokes, job, piece);
  }

  /** The same with other limits. */
  public TrialQuestion with(Requirements other) {
    return new TrialQuestion(
        about, rig, light, fixed, other, way, priors, borrow, strokes, job, piece);
  }

  /** The same for a coat. */
  public TrialQuestion with(Coating other) {
    return with(way.with(other));
  }

  /** The same for a way of working. */
  public TrialQuestion with(Way other) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, other, priors, borrow, strokes, job, piece);
  }

  /** The same from other priors. */
  public TrialQuestion with(Priors other) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, way, other, borrow, strokes, job, piece);
  }

  /** The same, with the log's other trials lending what they know. */
  public TrialQuestion borrowing(boolean lend) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, way, priors, lend, strokes, job, piece);
  }

  /** The same for work in other strokes. */
  public TrialQuestion with(Strokes other) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, way, priors, borrow, other, job, piece);
  }

  /** The same with the risk over a whole job. */
  public TrialQuestion with(JobLimit other) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, way, priors, borrow, strokes, Optional.of(other), piece);
  }

  /** The same for one piece. */
  public TrialQuestion forPiece(String board) {
    return new TrialQuestion(
        about, rig, light, fixed, asked, way, priors, borrow, strokes, job, Optional.of(board));
  }

  /**
   * What a window has to keep, where the limit may be that of a whole job.
   *
   * @param patchSquareCentimetres size of the area that a risk is about
   */
  Requirements asked(double patchSquareCentimetres) {
    return job.map(limit -> limit.with(asked, patchSquareCentimetres)).orElse(asked);
  }

  /** The coating family and the wood, which must be there. */
  public FamilyAndWood named() {
    return about.orElseThrow(
        () -> new IllegalArgumentException("The question must be about one family and wood."));
  }
}
