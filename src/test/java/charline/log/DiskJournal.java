package charline.log;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * What a program did to the files of a folder, step by step, played back up to a power cut. A disk
 * keeps what the program waited for; of what was written since, it keeps any part: here every block
 * of 4096 bytes is kept or lost by chance, and so is every change of a size. Names are kept in
 * their order up to some point after the last one that was waited for.
 */
final class DiskJournal {
  private static final int BLOCK = 4096;

  /**
   * One step.
   *
   * @param kind W written, T cut to a size, S waited for, L linked, R renamed, U taken away
   * @param path which file
   * @param number offset or size
   * @param to another name
   * @param bytes what was written
   */
  record Step(char kind, String path, long number, String to, byte[] bytes) {}

  private final List<Step> steps;
  private final String folder;

  private DiskJournal(List<Step> steps, String folder) {
    this.steps = steps;
    this.folder = folder;
  }

  static DiskJournal read(Path journal, Path folder) throws IOException {
    byte[] all = Files.readAllBytes(journal);
    List<Step> steps = new ArrayList<>();
    int at = 0;
    while (at < all.length) {
      int end = at;
      while (end < all.length && all[end] != '\n') {
        end++;
      }
      if (end >= all.length) {
        break; // cut off with the program
      }
      String[] words = new String(all, at, end - at, StandardCharsets.UTF_8).split(" ");
      at = end + 1;
      switch (words[0].charAt(0)) {
        case 'W' -> {
          int length = Integer.parseInt(words[3]);
          if (at + length >= all.length) {
            return new DiskJournal(steps, folder.toString());
          }
          steps.add(
              new Step(
                  'W',
                  words[1],
                  Long.parseLong(words[2]),
                  "",
                  Arrays.copyOfRange(all, at, at + length)));
          at += length + 1;
        }
        case 'T' -> steps.add(new Step('T', words[1], Long.parseLong(words[2]), "", null));
        case 'L', 'R' -> steps.add(new Step(words[0].charAt(0), words[1], 0, words[2], null));
        default -> steps.add(new Step(words[0].charAt(0), words[1], 0, "", null));
      }
    }
    return new DiskJournal(steps, folder.toString());
  }

  int size() {
    return steps.size();
  }

  /** The whole lines that the program had written to a file after so many steps. */
  List<String> saidBy(Path said, int after) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    steps.subList(0, after).stream()
        .filter(s -> s.kind() == 'W' && s.path().equals(said.toString()))
        .forEach(s -> out.writeBytes(s.bytes()));
    String text = out.toString(StandardCharsets.UTF_8);
    int end = text.lastIndexOf('\n');
    return end < 0
        ? List.of()
        : text.substring(0, end).lines().filter(line -> line.startsWith("P-")).toList();
  }

  /** A file as the program saw it, and what of it a cut may take. */
  private static final class Content {
    private byte[] kept = new byte[0];
    private final List<Step> open = new ArrayList<>();

    void apply(Step step) {
      if (step.kind() == 'T') {
        kept = Arrays.copyOf(kept, (int) step.number());
        return;
      }
      int end = (int) step.number() + step.bytes().length;
      if (kept.length < end) {
        kept = Arrays.copyOf(kept, end);
      }
      System.arraycopy(step.bytes(), 0, kept, (int) step.number(), step.bytes().length);
    }

    void waitedFor() {
      open.forEach(this::apply);
      open.clear();
    }

    byte[] afterCut(Random random) {
      for (Step step : open) {
        if (step.kind() == 'T') {
          if (random.nextBoolean()) {
            apply(step);
          }
          continue;
        }
        for (int from = 0; from < step.bytes().length; from += BLOCK) {
          if (random.nextBoolean()) {
            int to = Math.min(step.bytes().length, from + BLOCK);
            apply(
                new Step(
                    'W',
                    step.path(),
                    step.number() + from,
                    "",
                    Arrays.copyOfRange(step.bytes(), from, to)));
          }
        }
      }
      return kept;
    }
  }

  /** Lays the files into a folder as a disk might have them after a power cut. */
  void cut(int after, Random random, Path into) throws IOException {
    Map<String, Content> names = new HashMap<>();
    Map<String, Content> namesOnDisk = new HashMap<>();
    List<Map<String, Content>> since = new ArrayList<>();
    for (Step step : steps.subList(0, after)) {
      switch (step.kind()) {
        case 'W', 'T' -> {
          boolean made = !names.containsKey(step.path());
          names.computeIfAbsent(step.path(), p -> new Content()).open.add(step);
          if (made) {
            since.add(new HashMap<>(names));
          }
        }
        case 'S' -> {
          if (step.path().equals(folder)) {
            namesOnDisk = new HashMap<>(names);
            since.clear();
          } else if (names.containsKey(step.path())) {
            names.get(step.path()).waitedFor();
          }
        }
        default -> {
          Content content = names.get(step.path());
          if (step.kind() == 'U' || step.kind() == 'R') {
            names.remove(step.path());
          }
          if (step.kind() != 'U' && content != null) {
            names.put(step.to(), content);
          }
          since.add(new HashMap<>(names));
        }
      }
    }
    int named = random.nextInt(since.size() + 1);
    Map<String, Content> found = named == 0 ? namesOnDisk : since.get(named - 1);
    Map<Content, byte[]> cut = new HashMap<>();
    for (Map.Entry<String, Content> file : found.entrySet()) {
      byte[] bytes = cut.computeIfAbsent(file.getValue(), c -> c.afterCut(random));
      String name = file.getKey().substring(folder.length() + 1);
      if (!name.contains("/")) {
        Files.write(into.resolve(name), bytes);
      }
    }
  }

  /** Everything that the program wrote to a file, as it saw it. */
  byte[] written(Path file) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    steps.stream()
        .filter(s -> s.kind() == 'W' && s.path().equals(file.toString()))
        .forEach(s -> out.writeBytes(s.bytes()));
    return out.toByteArray();
  }
}
