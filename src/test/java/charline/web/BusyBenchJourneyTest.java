package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.log.Logbook;
import charline.log.PatchEntry;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * One log that command lines and the bench page write at once, and a bench page that is killed.
 * {@code -Dcharline.kills=500} kills as often as that.
 */
class BusyBenchJourneyTest {
  private static final int KILLS = Integer.getInteger("charline.kills", 2);
  private static final int BY_COMMAND = 4;
  private static final int BY_DEVICE = 16;

  @TempDir Path folder;
  private Path file;

  @BeforeEach
  void setUp() throws Exception {
    file = folder.resolve("boathouse.db");
    charline("rig add heron --kind pulsed --rated 300W --spot 0.5mm --rep 60kHz --width 60mm");
    charline("board add offcut --wood pine");
    charline("finish add wall-latex --coat latex:pale:90um");
  }

  private String charline(String line) throws IOException, InterruptedException {
    return BenchProcess.run(folder, ("--log " + file + " " + line).split(" "));
  }

  private String check() throws IOException, InterruptedException {
    return charline("check").replace("\n  ", " ");
  }

  /** A person at a terminal: gives the codes that were acknowledged. */
  private List<String> recordByCommand() throws IOException, InterruptedException {
    List<String> codes = new ArrayList<>();
    for (int i = 0; i < BY_COMMAND; i++) {
      String said =
          charline(
              "patch add --board offcut --finish wall-latex --power 60% --hand 22mm/s --passes 1"
                  + " --outcome clean");
      Matcher code = Pattern.compile("(P-\\d+) recorded: ").matcher(said);
      assertThat(code.find()).as(said).isTrue();
      codes.add(code.group(1));
    }
    return codes;
  }

  /** A person with a phone: gives what was acknowledged. */
  private static Map<UUID, String> recordByDevice(String address, long seed) throws Exception {
    Map<UUID, String> codes = new HashMap<>();
    Device device = new Device(address, seed);
    for (int i = 0; i < BY_DEVICE; i++) {
      UUID id = device.identity();
      codes.put(id, device.patch(id));
      device.reading(id, 2, "tint");
      device.photo(id);
    }
    return codes;
  }

  @Test
  void two_terminals_and_two_devices_record_at_once_and_nothing_is_lost_or_mixed_up()
      throws Exception {
    List<String> codes = new ArrayList<>();
    Map<UUID, String> onDevices = new HashMap<>();
    ExecutorService people = Executors.newFixedThreadPool(4);
    try (BenchProcess bench = BenchProcess.serve(file)) {
      Callable<Map<UUID, String>> one = () -> recordByDevice(bench.address(), 1);
      Callable<Map<UUID, String>> other = () -> recordByDevice(bench.address(), 2);
      List<Future<Map<UUID, String>>> devices = List.of(people.submit(one), people.submit(other));
      List<Callable<List<String>>> terminals =
          List.of(this::recordByCommand, this::recordByCommand);
      for (Future<List<String>> terminal : people.invokeAll(terminals)) {
        codes.addAll(terminal.get());
      }
      for (Future<Map<UUID, String>> device : devices) {
        onDevices.putAll(device.get());
      }
    } finally {
      people.shutdownNow();
    }
    codes.addAll(onDevices.values());
    assertThat(codes).hasSize(2 * BY_COMMAND + 2 * BY_DEVICE).doesNotHaveDuplicates();
    try (Logbook log = Logbook.openExisting(file, Clock.systemUTC())) {
      for (String code : codes) {
        assertThat(log.hasPatch(code)).as(code).isTrue();
      }
      onDevices.forEach(
          (id, code) -> {
            PatchEntry entry = log.patch(code);
            assertThat(entry.patch().id()).isEqualTo(id);
            assertThat(entry.patch().readings()).hasSize(2);
            assertThat(log.photos(code)).hasSize(1);
          });
    }
    assertThat(check()).contains("is undamaged: 40 patches with 72 readings");
  }

  /** Records until the connection breaks; gives the identity that nobody acknowledged. */
  private static UUID recordUntilKilled(String address, long seed, Map<UUID, String> acknowledged)
      throws InterruptedException, IOException {
    Device device = new Device(address, seed);
    while (true) {
      UUID id = device.identity();
      try {
        acknowledged.put(id, device.patch(id));
      } catch (IOException e) {
        return id;
      }
    }
  }

  @Test
  void a_bench_page_that_is_killed_lost_nothing_it_acknowledged_and_takes_the_rest_once()
      throws Exception {
    Random random = new Random(20261125);
    ExecutorService person = Executors.newSingleThreadExecutor();
    Map<UUID, String> acknowledged = new LinkedHashMap<>();
    try {
      for (int i = 0; i < KILLS; i++) {
        UUID unsure = recordThroughKill(person, random, acknowledged);
        try (BenchProcess again = BenchProcess.serve(file)) {
          Device device = new Device(again.address(), random.nextLong());
          String code = device.patch(unsure);
          assertThat(device.patch(unsure)).as("sent twice").isEqualTo(code);
          acknowledged.put(unsure, code);
        }
      }
    } finally {
      person.shutdownNow();
    }
    assertThat(acknowledged).hasSizeGreaterThanOrEqualTo(2 * KILLS);
    try (Logbook log = Logbook.openExisting(file, Clock.systemUTC())) {
      acknowledged.forEach(
          (id, code) -> assertThat(log.patch(code).patch().id()).as(code).isEqualTo(id));
      assertThat(acknowledged.values()).doesNotHaveDuplicates();
    }
    assertThat(check()).contains("is undamaged: " + acknowledged.size() + " patches");
  }

  private UUID recordThroughKill(
      ExecutorService person, Random random, Map<UUID, String> acknowledged)
      throws IOException, InterruptedException, ExecutionException {
    try (BenchProcess bench = BenchProcess.serve(file)) {
      long seed = random.nextLong();
      Map<UUID, String> now = new ConcurrentHashMap<>();
      Future<UUID> unsure = person.submit(() -> recordUntilKilled(bench.address(), seed, now));
      while (now.isEmpty() && !unsure.isDone()) {
        LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(2));
      }
      LockSupport.parkNanos(TimeUnit.MICROSECONDS.toNanos(random.nextInt(500_000)));
      bench.kill();
      UUID id = unsure.get();
      acknowledged.putAll(now);
      return id;
    }
  }
}
