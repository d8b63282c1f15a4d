/**
 * What to do next with wood and time: which patches to burn, whether the rig still is what it was,
 * and what the job will cost.
 *
 * <p>This package must not know of the log, of files or of screens.
 *
 * <h2>Decisions</h2>
 *
 * <p>The planner climbs a ladder to the first brown and uses a score afterwards. The next whole
 * rung is burned as long as nothing has charred, power first and at an easy hand speed, towards the
 * power with most room between the promises; from then on the patch that is expected to narrow the
 * two dose limits most, at that power. Rejected, by simulation: the score alone, which burned half
 * rungs; the climb at the first power; all powers as candidates of the score, which needed twice
 * the patches; the expected room as the score ({@code reports/planning.md}).
 *
 * <p>A rung is a quarter more of dose and of fluence, each by itself. One knob by a quarter is the
 * rule of the trade, and power moves both. Rejected: both together, which made two rungs of one and
 * cost three patches.
 *
 * <p>The planner asks for five boards, a window for three. What remains open longest is how much
 * boards differ. Rejected: three, which need half as many patches again where the window is narrow;
 * eight, which gain nothing.
 *
 * <p>A list keeps its patches more than 5 % apart in power or speed, as no hand tells them apart
 * closer, and puts at most half of them on one board. Control patches stay on one board, because on
 * several a drift would hide among the boards. Where everything charred, the list goes down by a
 * quarter a patch from three rungs below. Rejected: the score alone, which asked for 92, 91 and 90
 * mm/s on one new board, and for one setting six times where all had charred.
 *
 * <p>A piece is placed among boards by two patches at the start setting and three hotter ones, by
 * 1.25, 1.55 and 1.9, each read to six passes or its first brown. In 60 simulated shops it took
 * these five to serve 54 pieces; three at the start setting served as many where boards differ
 * little and far fewer where they differ. Rejected: four, or steps to 2.6, which broke more
 * promises; a sixth, which gained nothing.
 *
 * <p>A patch is read up to eight times, never past the first brown. A pass costs minutes, a patch
 * costs wood, and where a patch clears and chars is what the model learns from. Rejected: four
 * passes, with which half of the shops found no window in 40 patches.
 */
package charline.plan;
