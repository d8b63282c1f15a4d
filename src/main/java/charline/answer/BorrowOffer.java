package charline.answer;

/**
 * Other trials under the same light that could lend what they know, where few patches were taken
 * alone.
 *
 * @param strata how many strata
 * @param patches how many patches they have together
 */
public record BorrowOffer(int strata, int patches) {}
