package charline.answer;

import charline.plan.PairList;

/**
 * Pairs of patches that would tell two ways of working apart.
 *
 * @param compared what the trials say of the two so far
 * @param list the pairs, none where nothing may be burned
 */
public record PairsAnswer(CompareAnswer compared, PairList list) {}
