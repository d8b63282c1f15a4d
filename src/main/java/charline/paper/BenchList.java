package charline.paper;

import charline.answer.Precautions;
import charline.plan.NextPatches;
import charline.trial.Stratum;
import java.util.List;

/**
 * The patches to burn next as a page for the bench, with boxes to tick for what is seen after every
 * pass.
 *
 * @param stratum what the patches are about
 * @param next the patches
 * @param codes codes reserved for them, one each in their order
 * @param stamp who prints it from which log, and when
 * @param precautions what must be known before the beam is on
 */
public record BenchList(
    Stratum stratum,
    NextPatches next,
    List<String> codes,
    SheetStamp stamp,
    Precautions precautions) {
  public BenchList {
    codes = List.copyOf(codes);
    if (codes.size() != next.suggestions().size()) {
      throw new IllegalArgumentException(
          "A bench list needs one code for each patch, not %d for %d."
              .formatted(codes.size(), next.suggestions().size()));
    }
  }

  /** A list of a coat of which nothing is known. */
  BenchList(Stratum stratum, NextPatches next, List<String> codes, SheetStamp stamp) {
    this(stratum, next, codes, stamp, Precautions.NONE);
  }

  /** The page: the same in, the same bytes out. */
  public String html() {
    return BenchListPage.of(this).html();
  }
}
