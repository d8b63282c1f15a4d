package charline.paper;

import charline.paper.CellRegions.Block;
import charline.paper.MapPicture.Label;
import charline.paper.MapPicture.Point;
import charline.paper.MapPicture.Rect;
import charline.paper.MapPicture.Region;
import charline.paper.MapPicture.Tag;
import charline.paper.MapPicture.Tally;
import charline.paper.MapPicture.Tick;
import charline.quantity.Figures;
import charline.window.Box;
import charline.window.Recommendation;
import charline.window.Verdict;
import charline.window.WindowMap;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Lays out a map: axes, regions, words where there is room, box, start and trials. */
final class MapLayout {

  private static final int TAG_GAP = 26;
  private static final int TAG_FARTHEST = 300;
  private static final int TAG_STEP = 10;

  /** Right, left, below, above, then the corners. */
  private static final int[][] TAG_WAYS = {
    {1, 0}, {-1, 0}, {0, 1}, {0, -1}, {1, 1}, {-1, -1}, {1, -1}, {-1, 1}
  };

  private final Recommendation recommendation;
  private final WindowMap map;
  private final MapScale scale;
  private final Rect frame;
  private final LogAxis across;
  private final LogAxis up;
  private final CellRegions regions;
  private final PatchPlaces patches;
  private final SignsOnMap signs;

  MapLayout(Recommendation recommendation, WindowMap map, MapScale scale) {
    this.scale = scale;
    frame = scale.frame();
    this.recommendation = recommendation;
    this.map = map;
    across =
        LogAxis.aroundCells(map.speedsMillimetresPerSecond(), frame.x(), frame.x() + frame.width());
    up = LogAxis.aroundCells(map.powersPercent(), frame.y() + frame.height(), frame.y());
    regions = CellRegions.of(map);
    patches = PatchPlaces.of(recommendation.patches(), recommendation.bench(), map.passes());
    signs = SignsOnMap.of(patches.places(), across, up);
  }

  MapPicture picture() {
    // The box is for its own passes; on a map for other passes it would mislead.
    Optional<Box> box = WindowSheet.box(recommendation).filter(b -> b.passes() == map.passes());
    Optional<Rect> outline = box.map(this::outline);
    Optional<Point> start =
        box.map(b -> point(b.start().speedMillimetresPerSecond(), b.start().powerPercent()));
    List<Tag> tags = tags(outline, start);
    return new MapPicture(
        frame,
        drawnStates().stream().flatMap(s -> region(s).stream()).toList(),
        labels(outline, tags),
        across.ticks(scale.speedTicksApart()).stream()
            .map(v -> new Tick(Math.round(across.place(v)), Figures.shortest(v)))
            .toList(),
        up.ticks(scale.powerTicksApart()).stream()
            .map(v -> new Tick(Math.round(up.place(v)), Figures.shortest(v)))
            .toList(),
        "slower    ←    " + recommendation.bench().speed().kind().words() + ", mm/s    →    faster",
        "power, %",
        outline,
        start,
        tags,
        signs.drawn(),
        tallies(),
        notes());
  }

  /** None where no bound can be trusted: then the trials stand alone. */
  private List<CellState> drawnStates() {
    return recommendation.verdict() == Verdict.UNRELIABLE ? List.of() : List.of(CellState.values());
  }

  private Optional<Region> region(CellState state) {
    StringBuilder path = new StringBuilder();
    for (Block block : regions.blocks(state)) {
      Rect rect = rect(block);
      path.append('M').append(rect.x()).append(' ').append(rect.y());
      path.append('h').append(rect.width()).append('v').append(rect.height());
      path.append("h-").append(rect.width()).append('z');
    }
    return path.isEmpty() ? Optional.empty() : Optional.of(new Region(state, path.toString()));
  }

  private Rect rect(Block block) {
    long left = columnEdge(block.column());
    long top = rowEdge(block.endRow());
    return new Rect(left, top, columnEdge(block.endColumn()) - left, rowEdge(block.row()) - top);
  }

  private long columnEdge(int column) {
    return Math.round(
        frame.x() + (double) frame.width() * column / map.speedsMillimetresPerSecond().size());
  }

  private long rowEdge(int row) {
    return Math.round(frame.y() + frame.height() * (1 - (double) row / map.powersPercent().size()));
  }

  private Rect outline(Box box) {
    Point topLeft = point(box.speedMillimetresPerSecond().low(), box.powerPercent().high());
    Point bottomRight = point(box.speedMillimetresPerSecond().high(), box.powerPercent().low());
    return new Rect(
        topLeft.x(), topLeft.y(), bottomRight.x() - topLeft.x(), bottomRight.y() - topLeft.y());
  }

  private Point point(double speed, double power) {
    return new Point(Math.round(across.place(speed)), Math.round(up.place(power)));
  }

  private List<Label> labels(Optional<Rect> outline, List<Tag> tags) {
    return drawnStates().stream().flatMap(state -> label(state, outline, tags).stream()).toList();
  }

  /** The state's words where they hide nothing, its short word where only that does, else none. */
  private Optional<Label> label(CellState state, Optional<Rect> outline, List<Tag> tags) {
    return Stream.of(state.label(), state.shortLabel())
        .flatMap(text -> label(state, text, outline, tags).stream())
        .findFirst();
  }

  private Optional<Label> label(
      CellState state, String text, Optional<Rect> outline, List<Tag> tags) {
    double cellWidth = (double) frame.width() / map.speedsMillimetresPerSecond().size();
    double cellHeight = (double) frame.height() / map.powersPercent().size();
    return regions
        .roomFor(
            state,
            (int) Math.ceil(scale.lineHeight() / cellHeight),
            (int) Math.ceil(text.length() * scale.letterWidth() / cellWidth),
            block -> covered(rect(block), outline, tags))
        .map(this::rect)
        .filter(rect -> covered(rect, outline, tags) == 0)
        .map(r -> new Label(new Point(r.x() + r.width() / 2, r.y() + r.height() / 2 + 11), text));
  }

  private int covered(Rect rect, Optional<Rect> outline, List<Tag> tags) {
    return signs.touching(rect)
        + (tags.stream().anyMatch(t -> t.frame().touches(rect)) ? 100 : 0)
        + (outline.isPresent() && rect.touches(outline.get()) ? 100 : 0);
  }

  /** The box's words first, since they have fewer places to go. */
  private List<Tag> tags(Optional<Rect> outline, Optional<Point> start) {
    List<Tag> tags = new ArrayList<>();
    outline.ifPresent(
        o -> {
          tag(o, o, "stay inside", tags);
          start.ifPresent(at -> tag(o, new Rect(at.x(), at.y(), 0, 0), "START", tags));
        });
    return tags;
  }

  /** Adds a tag where, around the box, it hides least. */
  private void tag(Rect around, Rect about, String text, List<Tag> tags) {
    long width = Math.round(text.length() * scale.letterWidth()) + 30;
    long middleX = around.x() + around.width() / 2 - width / 2;
    long middleY = around.y() + around.height() / 2 - scale.tagHeight() / 2;
    long stepX = around.width() / 2 + width / 2 + TAG_GAP;
    long stepY = around.height() / 2 + scale.tagHeight() / 2 + TAG_GAP;
    Rect best = null;
    int least = Integer.MAX_VALUE;
    for (int farther = 0; farther <= TAG_FARTHEST; farther += TAG_STEP) {
      for (int[] way : TAG_WAYS) {
        Rect words =
            new Rect(
                middleX + way[0] * (stepX + farther),
                middleY + way[1] * (stepY + farther),
                width,
                scale.tagHeight());
        int cost =
            farther
                + 1000 * covered(words, Optional.of(around), tags)
                + (words.inside(frame) ? 0 : 1_000_000);
        if (cost < least) {
          best = words;
          least = cost;
        }
      }
    }
    tags.add(new Tag(about.nearestTo(best.middle()), best, text));
  }

  private List<Tally> tallies() {
    return Arrays.stream(PatchSign.values())
        .map(sign -> new Tally(sign, signs.count(sign)))
        .filter(t -> t.patches() > 0)
        .toList();
  }

  private List<String> notes() {
    List<String> notes = new ArrayList<>();
    String passes = Figures.count(map.passes(), "pass", "passes");
    notes.add(
        "Latest reading up to "
            + passes
            + (signs.drawn().stream().anyMatch(s -> s.note().endsWith("+"))
                ? "; + means more than one mark."
                : "."));
    if (patches.converted() > 0) {
      notes.add(patches.converted() + " burned on another set-up, placed by dose and intensity.");
    }
    if (patches.readLater() > 0) {
      notes.add(
          Figures.count(patches.readLater(), "patch", "patches")
              + " first read after more than "
              + passes
              + ", not drawn.");
    }
    if (signs.offTheMap() > 0) {
      notes.add(Figures.count(signs.offTheMap(), "patch", "patches") + " off this map.");
    }
    return notes;
  }
}
