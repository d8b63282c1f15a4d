package charline.cli.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LogPlaceTest {
  private static final Path HOME = Path.of("/home/ada");

  @Test
  void the_variable_comes_first() {
    assertThat(LogPlace.of(Map.of("CHARLINE_LOG", "/shop/log.db"), "Linux", HOME))
        .isEqualTo(Path.of("/shop/log.db"));
    assertThat(LogPlace.of(Map.of("CHARLINE_LOG", " "), "Linux", HOME))
        .isEqualTo(HOME.resolve(".local/share/charline/log.db"));
  }

  /** XDG Base Directory Specification 0.8: a relative XDG_DATA_HOME is to be ignored. */
  @Test
  void linux_keeps_it_in_the_data_home() {
    assertThat(LogPlace.of(Map.of("XDG_DATA_HOME", "/data"), "Linux", HOME))
        .isEqualTo(Path.of("/data/charline/log.db"));
    assertThat(LogPlace.of(Map.of("XDG_DATA_HOME", "data"), "Linux", HOME))
        .isEqualTo(HOME.resolve(".local/share/charline/log.db"));
  }

  @Test
  void other_platforms_have_their_own_folder() {
    assertThat(LogPlace.of(Map.of(), "Mac OS X", HOME))
        .isEqualTo(HOME.resolve("Library/Application Support/charline/log.db"));
    assertThat(LogPlace.of(Map.of("APPDATA", "/roaming"), "Windows 11", HOME))
        .isEqualTo(Path.of("/roaming/charline/log.db"));
    assertThat(LogPlace.of(Map.of(), "Windows 11", HOME))
        .isEqualTo(HOME.resolve("AppData/Roaming/charline/log.db"));
  }

  @Test
  void faults_are_written_into_the_data_folder_wherever_the_log_is() {
    assertThat(LogPlace.ofFaults(Map.of("CHARLINE_LOG", "/shop/log.db"), "Linux", HOME))
        .isEqualTo(HOME.resolve(".local/share/charline/faults"));
    assertThat(LogPlace.ofFaults(Map.of("XDG_DATA_HOME", "/data"), "Linux", HOME))
        .isEqualTo(Path.of("/data/charline/faults"));
  }

  @Test
  void fits_are_kept_in_the_cache_folder_of_the_platform() {
    assertThat(LogPlace.ofFits(Map.of(), "Linux", HOME)).isEqualTo(HOME.resolve(".cache/charline"));
    assertThat(LogPlace.ofFits(Map.of("XDG_CACHE_HOME", "/fast"), "Linux", HOME))
        .isEqualTo(Path.of("/fast/charline"));
    assertThat(LogPlace.ofFits(Map.of("XDG_CACHE_HOME", "fast"), "Linux", HOME))
        .isEqualTo(HOME.resolve(".cache/charline"));
    assertThat(LogPlace.ofFits(Map.of(), "Mac OS X", HOME))
        .isEqualTo(HOME.resolve("Library/Caches/charline"));
    assertThat(LogPlace.ofFits(Map.of("LOCALAPPDATA", "/local"), "Windows 11", HOME))
        .isEqualTo(Path.of("/local/charline/cache"));
    assertThat(LogPlace.ofFits(Map.of(), "Windows 11", HOME))
        .isEqualTo(HOME.resolve("AppData/Local/charline/cache"));
    assertThat(LogPlace.ofFits(Map.of("CHARLINE_CACHE", "/shop/fits"), "Linux", HOME))
        .isEqualTo(Path.of("/shop/fits"));
  }

  @Test
  void a_variable_that_is_no_path_is_refused() {
    assertThatThrownBy(() -> LogPlace.of(Map.of("CHARLINE_LOG", "a\0b"), "Linux", HOME))
        .isInstanceOf(Refusal.class)
        .hasMessageStartingWith("$CHARLINE_LOG must be a path on this system, not ");
  }
}
