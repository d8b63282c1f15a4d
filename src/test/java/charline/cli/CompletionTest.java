package charline.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** The tab key in bash, zsh and fish: the shells themselves complete, from a real log. */
@DisabledOnOs(value = OS.WINDOWS, disabledReason = "bash, zsh and fish are shells of Unix")
class CompletionTest {
  /** What bash makes of the words of a line when the tab key is pressed at its end. */
  private static final String BASH =
      """
      compopt() { :; }
      source "$1"
      COMP_WORDS=("${@:2}")
      COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
      _charline charline "${COMP_WORDS[COMP_CWORD]}" "${COMP_WORDS[COMP_CWORD - 1]}"
      printf '%s\\n' "${COMPREPLY[@]}"
      """;

  /** A shell in a terminal of its own, at which somebody types. */
  private static final String ZSH =
      """
      zmodload zsh/zpty
      zpty desk zsh -f -i
      zpty -w desk "PS1=; autoload -Uz compinit; compinit -D -u; source $1; echo rea''dy"
      zpty -r -m desk said '*ready*'
      zpty -w -n desk "$2"$'\\t'
      zpty -r -m desk said "*$3*" && print -r -- "$said"
      """;

  @TempDir Path folder;
  private Shell shell;
  private Path bin;

  @BeforeEach
  void open() throws IOException {
    shell =
        Shell.withBench(folder)
            .mustDo("board add \"door sill 1\" --wood oak --job \"north door\"")
            .mustDo("board add \"door sill 2\" --wood oak")
            .mustDo("board add doomed --wood oak")
            .mustDo("board void doomed --why rotten")
            .mustDo(
                "patch add --board boathouse-1 --finish wall-latex --power 60% --hand 22mm/s"
                    + " --passes 1 --outcome residue --by Bo");
    bin = Files.createDirectory(folder.resolve("bin"));
    Path program =
        Files.writeString(
            bin.resolve("charline"),
            "#!/bin/sh\nexec '%s' -XX:TieredStopAtLevel=1 -cp '%s' charline.cli.Main \"$@\"\n"
                .formatted(
                    Path.of(System.getProperty("java.home"), "bin", "java"),
                    System.getProperty("java.class.path")));
    Files.setPosixFilePermissions(program, PosixFilePermissions.fromString("rwxr-xr-x"));
  }

  private Path script(String name) throws IOException {
    return Files.writeString(
        folder.resolve("completion." + name), shell.run("completion " + name).out());
  }

  private String played(String... command) throws IOException, InterruptedException {
    return played(folder.resolve("boathouse.db"), command);
  }

  private String played(Path log, String... command) throws IOException, InterruptedException {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    Map<String, String> env = builder.environment();
    env.put("PATH", bin + ":" + env.get("PATH"));
    env.put("CHARLINE_LOG", log.toString());
    env.put("HOME", folder.toString());
    env.put("TERM", "dumb");
    env.put("LC_ALL", "C.UTF-8");
    Process process = builder.start();
    process.getOutputStream().close();
    Path said = folder.resolve("said");
    try (var out = process.getInputStream()) {
      Thread watch =
          new Thread(
              () -> {
                try {
                  if (!process.waitFor(120, TimeUnit.SECONDS)) {
                    process.destroyForcibly();
                  }
                } catch (InterruptedException e) {
                  process.destroyForcibly();
                }
              });
      watch.setDaemon(true);
      watch.start();
      Files.write(said, out.readAllBytes());
    }
    return Files.readString(said, StandardCharsets.UTF_8).strip();
  }

  /** What bash offers for the last of some words. */
  private List<String> bash(String... words) throws IOException, InterruptedException {
    return Arrays.stream(played(call(words)).split("\n")).toList();
  }

  private String[] call(String... words) throws IOException {
    String[] command = {"bash", "--norc", "-c", BASH, "bash", script("bash").toString()};
    return java.util.stream.Stream.concat(Arrays.stream(command), Arrays.stream(words))
        .toArray(String[]::new);
  }

  @Test
  void bash_completes_commands_options_and_words() throws Exception {
    assertThat(bash("charline", "pat")).containsExactly("patch");
    assertThat(bash("charline", "patch", "")).contains("add", "read", "show", "amend", "void");
    assertThat(bash("charline", "patch", "add", "--bo")).containsExactly("--board");
    assertThat(bash("charline", "rig", "add", "Gull", "--kind", ""))
        .containsExactly("pulsed", "cw");
    assertThat(bash("charline", "rig", "check", "am")).containsExactly("amend");
    assertThat(bash("charline", "import", "shed.csv", "--extra", ""))
        .containsExactly("note", "skip");
    assertThat(bash("charline", "sheet", "--paper", "=", "l")).containsExactly("letter");
  }

  @Test
  void bash_completes_names_of_the_log() throws Exception {
    assertThat(bash("charline", "patch", "add", "--board", ""))
        .containsExactly("boathouse-1", "boathouse-2", "door\\ sill\\ 1", "door\\ sill\\ 2");
    assertThat(bash("charline", "patch", "add", "--board", "\"Door"))
        .containsExactly("door sill 1", "door sill 2");
    assertThat(bash("charline", "patch", "add", "--board", "door\\ sill\\ 2"))
        .containsExactly("door\\ sill\\ 2");
    assertThat(bash("charline", "rig", "show", "h")).containsExactly("Heron");
    assertThat(bash("charline", "finish", "amend", "w")).containsExactly("wall-latex");
    assertThat(bash("charline", "finish", "add", "rail", "--coat", "shel")).contains("shellac");
    assertThat(bash("charline", "window", "late")).containsExactly("latex");
    assertThat(bash("charline", "window", "latex", "")).first().isEqualTo("oak");
    assertThat(bash("charline", "patch", "show", "P")).containsExactly("P-0001");
    assertThat(bash("charline", "find", "--by", "B")).containsExactly("Bo");
    assertThat(bash("charline", "find", "--job", "n")).containsExactly("north\\ door");
  }

  @Test
  void another_log_may_be_named_on_the_line() throws Exception {
    Path other = Files.createDirectory(folder.resolve("other"));
    Shell.withBench(other).mustDo("board add jetty --wood larch");
    String log = other.resolve("boathouse.db").toString();
    assertThat(bash("charline", "--log", log, "board", "show", "j")).containsExactly("jetty");
    assertThat(bash("charline", "board", "show", "--log", "=", log, "j")).containsExactly("jetty");
  }

  @Test
  void nothing_comes_into_the_prompt_where_the_log_is_missing_or_damaged() throws Exception {
    Path missing = folder.resolve("nowhere/none.db");
    String[] line = call("charline", "patch", "add", "--board", "");
    assertThat(played(missing, line)).isEmpty();
    assertThat(missing.getParent()).doesNotExist();

    Path damaged = folder.resolve("damaged.db");
    byte[] log = Files.readAllBytes(folder.resolve("boathouse.db"));
    Arrays.fill(log, 4096, log.length, (byte) 7);
    Files.write(damaged, log);
    assertThat(played(damaged, line)).isEmpty();
    Files.writeString(damaged, "no log at all");
    assertThat(played(damaged, line)).isEmpty();
    assertThat(played(folder, line)).isEmpty();

    for (String call :
        List.of("complete", "complete boat", "complete board b \u0000", "complete x y")) {
      Shell.Result result = shell.run(call);
      assertThat(result.code() + result.out() + result.err()).as(call).startsWith("0");
      assertThat(result.err()).isEmpty();
    }
  }

  @Test
  void the_log_is_read_and_left_as_it_is() throws Exception {
    byte[] before = Files.readAllBytes(folder.resolve("boathouse.db"));
    bash("charline", "patch", "add", "--board", "");
    assertThat(Files.readAllBytes(folder.resolve("boathouse.db"))).isEqualTo(before);
    assertThat(folder.resolve("boathouse.db-wal")).doesNotExist();
  }

  @Test
  void fish_completes_likewise() throws Exception {
    assumeTrue(isInstalled("fish"), "fish is not installed, so its completion is not tried.");
    Path script = script("fish");
    assertThat(fish(script, "charline pat")).containsExactly("patch");
    assertThat(fish(script, "charline patch add --bo")).containsExactly("--board");
    assertThat(fish(script, "charline patch add --board door"))
        .containsExactly("door sill 1", "door sill 2");
    assertThat(fish(script, "charline patch add --board=boat"))
        .containsExactly("--board=boathouse-1", "--board=boathouse-2");
    assertThat(fish(script, "charline patch void --why slip P")).containsExactly("P-0001");
    assertThat(fish(script, "charline --log /nowhere board show ")).containsExactly("");
  }

  private List<String> fish(Path script, String line) throws Exception {
    String said =
        played(
            "fish",
            "--no-config",
            "-c",
            "source $argv[1]; complete -C $argv[2]",
            script.toString(),
            line);
    return Arrays.stream(said.split("\n")).map(each -> each.split("\t")[0]).toList();
  }

  @Test
  void zsh_completes_likewise() throws Exception {
    assumeTrue(isInstalled("zsh"), "zsh is not installed, so its completion is not tried.");
    Path script = script("zsh");
    assertThat(zsh(script, "charline pat", "patch ")).endsWith("charline patch");
    assertThat(zsh(script, "charline patch add --board door", "sill")).endsWith("door\\ sill");
    assertThat(zsh(script, "charline rig show --json h", "Heron")).contains("--json Heron");
  }

  private String zsh(Path script, String line, String until) throws Exception {
    return played("zsh", "-f", "-c", ZSH, "zsh", script.toString(), line, until);
  }

  private static boolean isInstalled(String shell) {
    return Arrays.stream(System.getenv("PATH").split(":"))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, shell)));
  }
}
