package charline.ask;

import charline.log.reference.WordKey;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/** What plain words mean in a question, whatever the log has. */
enum Sense {
  // what was seen
  CLEAN(
      "clean, cleaned, cleans, cleanly, cleanest, came out clean, came clean, come out clean,"
          + " worked, works, work, ok, okay, okey, good, great, fine, success, successes,"
          + " successful, successfully, succeeded, succeed, perfect, perfectly, nice, nicely,"
          + " spotless, bare wood, came out well, came out right, came out fine, turned out well,"
          + " turned out right, went well, did the job, does the job, did the trick, does the"
          + " trick, do the trick, do the job"),
  CLEARED(
      "cleared, clears, clearing, came off, come off, comes off, coming off, came away, lifted,"
          + " lifts, lift, removed, removes, fully removed, all gone, gone, all off, fully off, got"
          + " off, nothing left, no finish left, no paint left, no coating left, took it off, takes"
          + " it off, took it all off, takes it all off"),
  CLEAR("clear"),
  CHARRED(
      "char, chars, charred, charring, charing, chared, burnt, burns, burning, scorched, scorch,"
          + " scorches, scorching, singed, singe, singes, blackened, blackening, came out black,"
          + " turned black, black wood, browned, browning, too hot, overheated, overburned,"
          + " overburnt, carbonised, carbonized, burn mark, burn marks, went black, went brown,"
          + " came out brown, turned brown, go black, goes black, gone black, going black, go"
          + " brown, goes brown, gone brown, going brown, turn black, turns black, turning black,"
          + " turn brown, turns brown, turning brown, become black, becomes black, became black,"
          + " becoming black, become brown, becomes brown, became brown, becoming brown, get black,"
          + " gets black, got black, get brown, gets brown, got brown, come out black, comes out"
          + " black, come out brown, comes out brown"),
  BURN("burn, burned"),
  TINTED(
      "tint, tinted, tints, tinting, discoloured, discolored, discolouration, discoloration,"
          + " discolour, discolor, colour left, color left, pigment left, colour in the grain,"
          + " color in the grain"),
  RESIDUE(
      "residue, residues, residual, remnant, remnants, remains, remained, remaining, leftover,"
          + " leftovers, left over, left behind, finish left, paint left, coating left, coat left,"
          + " stuff left, some left, something left, finish remaining, paint remaining, still"
          + " paint, still finish, still some, rest of paint, rest of the paint, paint rests, rests"
          + " of paint, not fully gone, not all gone"),
  FAILED(
      "failed, problem, problems, trouble, troubles, issue, issues, complications, difficulties,"
          + " fail, fails, failure, failures, failing, bad, badly, unsuccessful, unsuccessfully,"
          + " poor, poorly, went wrong, no good, dirty, unclean, no success, without success, did"
          + " not work, does not work, do not work, not work, not working, did not come clean, went"
          + " bad, turned out bad, came out bad, useless"),
  SAFE(
      "safe, safely, unharmed, undamaged, unburnt, unburned, uncharred, unscorched, unscathed,"
          + " intact, did not hurt the wood, not too hot"),
  UNCLEARED(
      "uncleared, did not come off, does not come off, do not come off, not come off, never came"
          + " off"),

  // joining
  AND("and, plus, as well as, also, together with, und"),
  OR("or, nor, or else, versus, vs"),
  NOT(
      "not, no, non, un, free of, free from, without, neither, none, lacking, missing, minus,"
          + " nothing"),
  NEVER("never, not ever, not once, at no time"),
  EVER("ever, at some point, at any point, at one point"),
  EXCEPT(
      "except, except for, excluding, excl, besides, apart from, other than, but not, anything but,"
          + " all but, aside from, save for, rather than, instead of, in place of, leave out,"
          + " leaving out, ignore, ignoring, skip"),
  BUT("but"),

  // stacks
  OVER("over, on top of, atop, above, upon, onto, over top of, covering"),
  ON("on"),
  UNDER(
      "under, beneath, below, underneath, under it, beneath it, below it, underneath it, under"
          + " neath, down below, as undercoat, as base coat, as base"),
  WITH(
      "with, containing, contains, contain, including, includes, incl, having, has, have,"
          + " featuring, using"),
  INSIDE(
      "in it, in them, in the stack, in stack, in a stack, in its stack, in the mix, in the finish,"
          + " somewhere in it, inside, in the coats, among the coats, in its stack, in there"),
  TOP(
      "as top coat, top coat, top coats, outer coat, outermost coat, top layer, on top, outermost,"
          + " as topcoat, as the top coat, as the outermost coat, as the outer coat"),
  BARE("bare, directly on the wood, on the wood itself"),

  // people
  MINE("my, mine, myself"),
  BY("by, from person"),
  JUDGED("judged, read, assessed, graded, inspected, evaluated, judge, looked at, reviewed"),

  // what is noted
  SOOT("soot, sooty, sooted, sootiness, sooting"),
  PHOTO(
      "photo, photos, photograph, photographs, photographed, picture, pictures, pics, pic, image,"
          + " images"),
  PLANNED(
      "planned, plan, plans, from the plan, from a plan, bench list, from the bench list, as"
          + " planned, from a bench list, on the plan, on a plan"),
  VOID("void, voided, voids, invalid, struck, crossed out, discarded, thrown out"),
  COUNTING_ALL(
      "including void, including void ones, including voided, including the void ones, also void,"
          + " void too, with void ones, also the void, also the void ones, also void ones, even"
          + " void ones, void included"),
  IDLE(
      "line up, lines up, lined up, so good as to, so kind as to, good enough to, kind enough to,"
          + " the deal, by the way, at all, of course, in general, up to now, until now, for sure,"
          + " no matter, so far, as well, each other, whether or not, no idea"),
  NOTHING_BUT("nothing but, nothing else than, nothing other than"),
  FREE("free"),
  NOTE(
      "note, notes, noted, comment, comments, commented, remark, remarks, annotation, annotations"),
  WRITING(
      "wrote that, write that, writes that, written that, writing that, wrote down that, write down"
          + " that, written down that, put down that, jotted down that"),
  MENTIONING(
      "speak of, speaks of, speaking of, mention, mentions, mentioning, mentioned, saying, says,"
          + " said, reading, that say, that says, about, like, contains, containing, of, with, has,"
          + " have, is, was, includes, including, the word, the words, word, words"),
  WETTED("wet, wetted, wetting, damp, dampened, moistened"),
  DRY("dry"),
  AIR(
      "air, air assist, air on, air blowing, blown air, compressed air, with air, with air assist,"
          + " air assist on, with air assist on, with air on"),
  EXTRACTION("extraction, extraction on, extracted, extractor, fume extraction, suction"),
  PULSED("pulsed, pulse laser, pulsed laser, pulsed light, pulsed rig, pulsed rigs"),
  CW("cw, continuous, continuous wave, continuous laser, cw laser"),
  ENDING_OFF("off"),

  // wood and board
  FACE("face, faces, flat, on the flat, flat face"),
  ARRIS("arris, arrises, edge, edges"),
  END_GRAIN("end grain, endgrain, end grains"),
  MOULDING("moulding, mouldings, molding, moldings, profile, profiles, profiled, moulded, molded"),
  KNOT("knot, knots, knotty"),
  SAP("sap, sapwood, sap wood"),
  HEART("heart, heartwood, heart wood"),
  SOLID("solid, solid wood"),
  VENEER("veneer, veneered, veneers"),
  HARDWOOD(
      "hardwood, hardwoods, hard wood, hard woods, broadleaf, broadleaved, broad leaved,"
          + " deciduous"),
  SOFTWOOD(
      "softwood, softwoods, soft wood, soft woods, conifer, conifers, coniferous, needle wood,"
          + " needle woods"),
  RING_POROUS("ring porous, ring porous wood, ring porous woods, ringporous"),
  SEMI_RING("semi ring porous, semi ring, semiring porous, half ring porous"),
  DIFFUSE("diffuse porous, diffuse, diffuse porous wood, diffuse porous woods"),
  PANEL(
      "panel, panels, panel product, panel products, sheet goods, man made board, man made boards,"
          + " manmade board, manmade boards, engineered board, engineered boards, board material"),
  RESINOUS("resinous, resiny, resin, resin rich, pitchy, with resin"),
  PALE(
      "pale, pale coat, pale coats, light coat, light coats, light coloured, light colored, pale"
          + " coloured, pale colored, light paint, pale paint, light finish, pale finish, light"
          + " tone, pale tone, pale toned, bright coat"),
  MID(
      "mid, mid tone, mid toned, middle tone, medium tone, medium coloured, medium colored, mid"
          + " coat"),
  DARK(
      "dark, dark coat, dark coats, dark coloured, dark colored, dark paint, dark finish, dark"
          + " tone, dark toned"),
  PAINT("paint, paints, painted, paintwork"),
  PRIMED("primed, undercoated"),

  // what else is asked
  COUNT("how many, number of, count, count of, how often, how many times, number"),
  BEST(
      "best, optimal, optimum, ideal, recommended, recommend, recommendation, should i use, should"
          + " we use, shall i use, best setting, best settings, what should, which should, sweet"
          + " spot, start setting, starting point"),
  LAST("last, latest, newest, most recent, most recently, lastly, recent"),
  FIRST("first, oldest, earliest, very first"),
  TOP_FEW("top"),
  LOWEST("lowest, least, smallest, minimum, minimal, min, lowermost, fewest"),
  HIGHEST("highest, most, largest, biggest, greatest, maximum, maximal, max, uppermost, topmost"),
  FASTEST("fastest, quickest, highest speed, speediest"),
  SLOWEST("slowest"),
  HOTTEST("hottest, strongest, heaviest, harshest"),
  COOLEST("coolest, coldest, gentlest, mildest, weakest, lightest, softest"),
  DEEPEST("deepest"),
  SHALLOWEST("shallowest"),
  SORTED(
      "sorted by, sort by, order by, ordered by, by order of, ranked by, rank by, in order of,"
          + " sorted on"),
  NEWEST_FIRST("newest first, latest first, most recent first"),
  OLDEST_FIRST("oldest first, earliest first"),
  DESCENDING("descending, desc, downwards, highest first, from high to low, falling"),
  ASCENDING("ascending, asc, upwards, lowest first, from low to high, rising"),
  BY_HAND("by hand, hand held, handheld, freehand"),
  SCANNED("scanned, with the scanner, by scanner, line scan, by scan"),
  TIMED("timed, by time, by the clock"),
  ONE_PASS(
      "at once, first go, one go, in one go, straight away, right away, first time, at first try,"
          + " first try, single pass, in a single pass, immediately, instantly"),
  TWICE("twice"),
  TOOK(
      "for the first time, took, takes, take, taking, needed, needs, need, needing, required,"
          + " requires, require, only after, not before"),
  HALF_POWER("half power"),
  FULL_POWER("full power"),
  MEASURED_DEPTH(
      "depth measured, measured depth, with a depth, depth noted, with depth, depth known, with"
          + " measured depth, with a measured depth");

  private static final Map<String, Sense> BY_PHRASE = new HashMap<>();
  private static final int LONGEST;

  static {
    int longest = 1;
    for (Sense sense : values()) {
      for (String phrase : sense.phrases) {
        BY_PHRASE.putIfAbsent(WordKey.key(phrase), sense);
        longest = Math.max(longest, phrase.split(" ").length);
      }
    }
    LONGEST = longest;
  }

  private final List<String> phrases;

  Sense(String phrases) {
    this.phrases = Arrays.asList(phrases.split(", "));
  }

  /** What a phrase means. */
  static Optional<Sense> of(String phrase) {
    return Optional.ofNullable(BY_PHRASE.get(phrase));
  }

  /** Most words that any phrase has. */
  static int longest() {
    return LONGEST;
  }

  boolean has(String phrase) {
    return phrases.contains(phrase);
  }

  /** Words to offer for a mistyped one. */
  static Collection<String> words() {
    return new TreeSet<>(BY_PHRASE.keySet());
  }
}
