package charline.cache;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Other code, another mark, though its name, size and time are the same. */
class BuildMarkTest {
  private static final Map<String, String> CODE =
      Map.of("charline/model/Fitter.class", "0.28", "charline/stat/Sampler.class", "8192");

  @TempDir Path folder;

  private Path jar(String name, Map<String, String> entries, String comment) throws IOException {
    Path jar = folder.resolve(name);
    try (OutputStream out = Files.newOutputStream(jar);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.setMethod(ZipOutputStream.DEFLATED);
      zip.setComment(comment);
      for (Map.Entry<String, String> each : new TreeMap<>(entries).entrySet()) {
        ZipEntry entry = new ZipEntry(each.getKey());
        entry.setTime(0);
        zip.putNextEntry(entry);
        zip.write(each.getValue().getBytes());
        zip.closeEntry();
      }
    }
    return jar;
  }

  private static Map<String, String> changed() {
    Map<String, String> other = new TreeMap<>(CODE);
    other.put("charline/model/Fitter.class", "0.25");
    return other;
  }

  @Test
  void a_jar_is_known_by_the_checksums_of_all_that_is_in_it() throws IOException {
    String mark = BuildMark.ofJar(jar("a.jar", CODE, ""));
    assertThat(BuildMark.ofJar(jar("b.jar", CODE, ""))).isEqualTo(mark);
    assertThat(BuildMark.ofJar(jar("b.jar", CODE, "built by hand ".repeat(99)))).isEqualTo(mark);
    assertThat(BuildMark.ofJar(jar("a.jar", changed(), ""))).isNotEqualTo(mark);
  }

  @Test
  void what_is_no_jar_has_no_mark() throws IOException {
    Path file = Files.writeString(folder.resolve("letter.jar"), "Dear Ada, " + "x".repeat(99999));
    assertThatThrownBy(() -> BuildMark.ofJar(file)).isInstanceOf(IOException.class);
    assertThatThrownBy(() -> BuildMark.ofJar(Files.createFile(folder.resolve("empty.jar"))))
        .isInstanceOf(IOException.class);
  }

  private String classes(Map<String, String> files) throws IOException {
    for (Map.Entry<String, String> each : files.entrySet()) {
      Path file = folder.resolve(each.getKey());
      Files.createDirectories(file.getParent());
      Files.writeString(file, each.getValue());
    }
    return BuildMark.ofClasses(folder.resolve("charline"));
  }

  @Test
  void a_folder_of_classes_is_known_by_all_that_is_in_them() throws IOException {
    String mark = classes(CODE);
    assertThat(classes(CODE)).isEqualTo(mark);
    assertThat(classes(changed())).isNotEqualTo(mark);
    assertThat(classes(CODE)).isEqualTo(mark);
  }

  @Test
  void this_build_has_one() throws IOException {
    assertThat(BuildMark.ofThisBuild())
        .isEqualTo(BuildMark.ofThisBuild())
        .contains(System.getProperty("java.vm.version"));
  }
}
