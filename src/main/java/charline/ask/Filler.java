package charline.ask;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Words of plain speech that say nothing about patches: a closed list, verbs in all their forms. A
 * word that is not here and not known is refused, since it may have been the one that mattered: so
 * what is done with a broom or with money is not here.
 */
final class Filler {
  private static final Set<String> FUNCTION =
      words(
          "a an the this that these those there here it its itself they them their theirs he she"
              + " him her his hers someone somebody anyone anybody everyone everybody one ones what"
              + " which who whom whose when where why how whether if then than as so such same all"
              + " any each every some both either many much anything everything something anywhere"
              + " everywhere enough after before several various whole entire total overall",
          "i me we us our ours ourselves you your yours",
          "am is are was were be been being do does did doing done have has had having will would"
              + " shall should can could may might must ought let lets dare",
          "at of for to from in on into onto off out up down about around through via by within"
              + " during per between among across along against toward towards upon",
          "ever yet still already again just only even also too very really quite rather pretty"
              + " actually basically simply altogether overall maybe perhaps probably possibly"
              + " please pls plz thanks thank kindly currently now far always usually often"
              + " sometimes mostly generally exactly ever once so properly completely fully totally"
              + " entirely truly well instead else otherwise anyway together apart alone separately"
              + " only back ago new old",
          "whatever whichever whoever whenever wherever however nevertheless meanwhile thus hence"
              + " hence therefore certain certainly sure surely particular particularly specific"
              + " specifically especially main mainly several other others another own same similar"
              + " different respective exact real true normal usual typical regular special general"
              + " common various single easy easily quick quickly nearly almost roughly soon later"
              + " earlier early late today's interesting important useful relevant possible"
              + " available necessary known unknown able unable worth due likely unlikely able sir"
              + " mate folks grateful curious glad obliged interested delighted happy",
          "hi hello hey ok yes yeah yep um uh hm hmm ah oh btw eg ie etc vs re",
          "because noted commented while although though however whereas therefore",
          "thing things stuff kind kinds sort sorts type types way ways bit lot lots few");

  private static final Set<String> NOUNS =
      words(
          "patch patches trial trials test tests try tries attempt attempts run runs shot shots"
              + " firing firings spot spots setting settings parameter parameters param params"
              + " value values number numbers figure figures result results outcome outcomes record"
              + " records entry entries reading readings data info information details detail list"
              + " lists listing overview summary table log logs logbook book database history"
              + " question questions answer answers",
          "board boards wood woods timber timbers rig rigs machine machines laser lasers beam head"
              + " heads gun unit units device devices finish finishes coat coats coating coatings"
              + " layer layers film films stack stacks surface surfaces material materials"
              + " substrate job jobs project projects work works piece pieces workpiece offcut"
              + " offcuts scrap scraps family families combination combinations combo combos case"
              + " cases example examples person people guy guys colleague",
          "power powers speed speeds dose doses energy fluence intensity passes pass depth depths"
              + " thickness moisture width spot spacing pulse rate knob knobs dial area size"
              + " temperature",
          "user users operator operators colleague colleagues apprentice trainee boss customer luck"
              + " chance chances idea ideas thought thoughts clue advice help hint reason reasons"
              + " problem problems issue issues trouble experience experiences effect effects end"
              + " start beginning rest point points step steps line order total sum amount amounts"
              + " effort efforts approach method methods technique process procedure treatment"
              + " treatments session sessions sheet sheets file files page report reports programme"
              + " program system species sample samples batch series set sets pair pairs couple"
              + " bunch pile appearance look looks quality side sides success time times day days"
              + " date dates moment week month year place places level levels range group groups"
              + " class classes part parts name names column columns row rows word words",
          "colour color tone form condition shape state");

  private static final Set<String> OBJECTS =
      words(
          "board boards wood woods timber rig rigs machine machines laser lasers finish finishes"
              + " coat coats coating coatings layer layers job jobs piece pieces offcut offcuts"
              + " reading readings family families outcome outcomes data info information colour"
              + " tone form condition person people user users time times day days date dates work"
              + " spot firing");

  /** Verbs in their plain form; their regular forms follow. */
  private static final Set<String> VERBS =
      words(
          "show list give get find tell look search see display print fetch bring return pull"
              + " compare check know want need like love wish ask help report sum summarise"
              + " summarize filter select pick choose view open say mean mention think wonder"
              + " remember recall explain describe",
          "try test use do make run fire shoot laser zap treat strip ablate process work perform"
              + " carry apply set dial put take go come start stop begin finish happen end turn"
              + " record log enter note write add save keep store plan prepare attempt operate"
              + " handle hit blast beam lase expose irradiate experiment expect hold have got"
              + " involve concern relate belong match contain include consist leave stay exist"
              + " appear seem become prove yield produce achieve reach give provide recommend"
              + " suggest advise deliver perform burn judge read assess clean remove tackle address"
              + " deal cover sit lie stand live bear paint coat need call name label group sort"
              + " order count limit restrict focus concentrate interest result cause last answer"
              + " share move walk drive drop lower raise increase reduce change adjust sand remind"
              + " manage wonder figure dig fetch grab pull track trace spot notice observe note"
              + " happen struggle cope finish complete accomplish attain aim target mind care"
              + " matter guess bet hope believe feel sound seem look assume suppose understand"
              + " teach learn study inspect gather collect retrieve extract filter narrow focus"
              + " point refer relate depend vary differ remain stay survive suffer experience"
              + " undergo receive accept reject avoid prevent stop touch reach attack hurt harm"
              + " damage ruin spoil destroy cut scrape peel flake melt heat cool soak rub"
              + " brush blow vacuum mask cover protect mount hang place lay build own"
              + " spend save waste lose win keep hold carry bring send deliver scan pass wipe"
              + " repeat redo measure meter review learn forget seek draw throw continue confirm"
              + " conclude decide define describe determine discover examine explore identify"
              + " indicate judge locate observe organise organize proceed prefer propose regard"
              + " require resolve reveal serve settle solve specify state study succeed support"
              + " surprise target trust turn verify declare appreciate");

  private static final Set<String> IRREGULAR =
      words(
          "forgot forgotten sought drew drawn blew blown broke broken rose risen spoke spoken woke"
              + " shut split spread bound hung dug flew grew grown hid threw"
              + " thrown gave given got gotten found told looked saw seen shown brought took taken"
              + " went gone came ran made did done shot fired left kept held said meant thought"
              + " knew known chose chosen wrote written put set hit read began begun became stood"
              + " sat lay wore drove driven stayed stuck won lost felt heard dealt led"
              + " met built sent spent taught caught fell fallen tried tries trying used using"
              + " lying dying getting putting running setting hitting stripping zapping stopping"
              + " beginning planned planning logged logging");

  /** Words that are passed over unless the log has something that is called so. */
  private static final Set<String> UNLESS_NAMES =
      words(
          "hand hands bench shop workshop team client clients front back left right top bottom"
              + " middle house room inside outside yard garage studio");

  private static final Set<String> ALL = all();

  private Filler() {}

  private static Set<String> words(String... texts) {
    return Arrays.stream(texts)
        .flatMap(text -> Arrays.stream(text.split("\\s+")))
        .collect(Collectors.toUnmodifiableSet());
  }

  private static Set<String> all() {
    Set<String> all = new HashSet<>(FUNCTION);
    all.addAll(NOUNS);
    all.addAll(IRREGULAR);
    VERBS.stream().flatMap(Filler::forms).forEach(all::add);
    return all;
  }

  private static Stream<String> forms(String verb) {
    String stem = verb.endsWith("e") ? verb.substring(0, verb.length() - 1) : verb;
    char last = verb.charAt(verb.length() - 1);
    return Stream.of(
        verb,
        verb + "s",
        verb + "es",
        stem + "ed",
        stem + "ing",
        verb + last + "ed",
        verb + last + "ing",
        verb.endsWith("y") ? verb.substring(0, verb.length() - 1) + "ied" : verb,
        verb.endsWith("y") ? verb.substring(0, verb.length() - 1) + "ies" : verb);
  }

  /** Whether a word may be passed over. */
  static boolean is(String word) {
    return ALL.contains(word);
  }

  /** Whether a word is the plain form of such a verb. */
  static boolean isVerb(String word) {
    return VERBS.contains(word);
  }

  /** Words that hold a sentence together. */
  static Set<String> functionWords() {
    return FUNCTION;
  }

  /** Adverbs that say nothing of how a patch was made. */
  static boolean isAdverb(String word) {
    return word.length() > 4
        && word.endsWith("ly")
        && !Set.of(
                "slowly",
                "quickly",
                "deeply",
                "partly",
                "partially",
                "lightly",
                "heavily",
                "freshly",
                "evenly",
                "weekly",
                "monthly",
                "daily",
                "yearly",
                "early",
                "gently",
                "strongly")
            .contains(word);
  }

  /** Whether a word names a thing of the shop in general: board, woods, person. */
  static boolean isNoun(String word) {
    return NOUNS.contains(word);
  }

  /** Whether a word may be passed over where no name of the log has it. */
  static boolean isUnlessNamed(String word) {
    return UNLESS_NAMES.contains(word);
  }

  /** Whether a word names a thing that is no patch, coat, wood, board or rig. */
  static boolean isThing(String word) {
    return NOUNS.contains(word) && !isPatches(word) && !OBJECTS.contains(word);
  }

  /** Whether a word names patches: those, ones, trials, settings. */
  static boolean isPatches(String word) {
    return Set.of(
            "patch",
            "patches",
            "trial",
            "trials",
            "test",
            "tests",
            "try",
            "tries",
            "attempt",
            "attempts",
            "run",
            "runs",
            "shot",
            "shots",
            "setting",
            "settings",
            "result",
            "results",
            "record",
            "records",
            "entry",
            "entries",
            "one",
            "ones",
            "spots",
            "burns")
        .contains(word);
  }

  /** Whether a word says that several are meant. */
  static boolean isSeveral(String word) {
    return isPatches(word) && word.endsWith("s") || word.equals("few");
  }

  /** Whether a word is what somebody did to a patch, in the past. */
  static boolean isDone(String word) {
    return word.endsWith("ed") && word.length() > 3
        || IRREGULAR.contains(word)
        || word.equals("burnt");
  }
}
