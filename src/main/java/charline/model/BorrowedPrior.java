package charline.model;

import charline.quantity.Invariant;
import java.util.List;

/**
 * A prior for one event as other trials of the log would have it, and how far it is trusted: it
 * stands with weight {@code share} beside the usual prior, and the trials themselves then move that
 * weight (Schmidli et al. 2014, Biometrics 70:1023-1032). Where they are unlike the others, the
 * weight goes to the usual prior and little is borrowed.
 *
 * @param prior what the others say
 * @param share weight before the trials, inside (0, 1)
 * @param lenders the others, nearest first; one or more
 */
public record BorrowedPrior(Prior prior, double share, List<Lender> lenders) {
  public BorrowedPrior {
    Invariant.within("Share of what is borrowed", share, 1e-6, 1 - 1e-6, "");
    lenders = List.copyOf(lenders);
  }

  /**
   * What became of a loan.
   *
   * @param lenders the others
   * @param weight weight that the trials leave to what was borrowed, 0 to 1
   */
  public record Used(List<Lender> lenders, double weight) {
    public Used {
      lenders = List.copyOf(lenders);
    }
  }
}
