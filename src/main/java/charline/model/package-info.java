/**
 * The passes-to-event model: patches in, posteriors out. The only translator between trade words
 * and arrays.
 *
 * <p>This package must not know of the log, of files or of screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>One log-logistic law serves both events, with readings as interval censoring and a normal
 * shift per board. The chance that an event falls between two readings is exactly a product of one
 * success, one failure and a factor free of the board, so every patch is a row or two of a logistic
 * regression and one exponential a row serves all nodes of the board's shift.
 *
 * <p>The nodes of a board's shift are evenly spaced and as close as the board with most patches
 * needs. A Gauss-Hermite rule of fifteen nodes was off by whole units of log likelihood where
 * boards differ much and patches little, and turned a risk of 3 % into 3.7 %.
 *
 * <p>Risk rises with dose in every draw, so each draw has one dose at which the risk is the
 * requested one. Bounds on risk become quantiles of dose, and a window is found without integrating
 * again.
 *
 * <p>Coordinates are straight where the posterior is: soft-plus, not logarithm, for weights that
 * may be 0.
 *
 * <p>Intensity by itself may count against char: the trade's rule is that pulses burn less than
 * continuous light of the same dose, and one variable, the areal dose, ordered the colour of beech
 * in published trials (Kudela, Kubovsky and Andrejko 2024, Forests 15:2211), which is a weight of
 * 0. So its prior is normal about 0 with a spread of 0.5, cut off at -1: below that, more power at
 * the same speed would char less, and two corners would no longer bound a box. In 100 simulated
 * shops of 24 patches whose truth was -0.4, 89 of the 90 % intervals contained it, in 100 whose
 * truth was 0.5, 97; sixty ordinary shops found 41 windows in place of 40. Rejected: 0.4 cut off at
 * 0, which contained -0.4 in none of 100 and said that nothing spoke against it; a middle of 0.1 or
 * 0.2 (84 of 100; 47 of 60).
 *
 * <p>The prior of clearing is for a coat of 70 µm and moves with the logarithm of thickness, where
 * most coats' is known: published figures for paint run from 0.64 to 3.3 kJ for each cm³ lifted,
 * and their geometric middle makes 10 J/cm² for 70 µm. Where coats differ, the weight is the one
 * that the trials find; where all are alike, the prior's own, whose doubt widens that of the dose.
 *
 * <p>Continuous light has priors of its own for dose. Published doses at 10.6 µm from apparently
 * unaffected to totally dark beech, 7.8 to 75 J/cm² (Vidholdova, Reinprecht and Igaz 2017,
 * BioResources 12:4177-4186), are one spread of char either way.
 *
 * <p>A pilot sample always comes before importance sampling. The posteriors are skewed, and
 * sampling around the mode alone missed 5 and 95 % quantiles by up to a quarter of the spread while
 * k-hat looked fine; centred on the pilot's mean, by a thirtieth. Rejected: moving only when k-hat
 * exceeds 0.7.
 *
 * <p>The proposal is a Student t with four degrees of freedom. Six and ten gave larger worst errors
 * on the reference strata.
 *
 * <p>The prior of pale against dark gives the trade's factor of 2 to 4 only 60 %, with heavy tails.
 * At 83 % its 90 % intervals contained a true factor of 2 in 25 of 40 simulated sets of trials.
 * Rejected: a normal prior, which cannot let go.
 *
 * <p>How much boards differ is one number per stratum, of which three boards say little. So strata
 * share a level, half-normal with scale 0.25 before any trial, and each differs from it by a factor
 * of 1.5; all other strata of the log show the level, for char and clearing apart. An empty log
 * falls back to the level's own prior. Each stratum's chance under a level is the mean, over draws
 * made under the prior of an empty log, of one density over the other; that prior contains every
 * level, so the ratio is bounded and no re-weighting can fail. Rejected: a half-normal per stratum
 * made wider for safety, which closed a third of usual windows; one spread for both events, which
 * broke more promises where they differ.
 *
 * <p>The middle of a transition's width is 0.28. Among the shops that served to choose, 0.25 broke
 * char promises in 11 of 100, and 0.31 found 76 windows of 100 where 0.25 found 85.
 *
 * <p>The draws of every stratum and event begin at a seed of its own, so that the error that the
 * points of one seed have in common is not that of every answer.
 *
 * <p>A piece's patches weigh the draws that the other boards gave, its shift integrated out, so
 * that no new fit is needed; where k-hat says that the weighting failed, the model is fitted to all
 * patches and only the shift is conditioned.
 *
 * <p>Borrowing from other trials is off by default and starts with a fifth of the weight; {@code
 * reports/pooling.md} shows what it buys and costs. Rejected: a half, which broke more promises in
 * strata unlike the others; moments of a random-effects fit with an estimated spread, which is zero
 * for one lender.
 *
 * <p>A borrowed prior and the usual one are sampled apart and mixed by their integrals. One target
 * with two modes would be sampled badly.
 */
package charline.model;
