package charline.cli;

import charline.cli.command.LogCommand;
import charline.cli.command.Release;
import charline.log.Logbook;
import java.nio.file.Path;
import java.time.LocalDate;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** The program itself: what holds for every command. */
@Command(
    addMethodSubcommands = false,
    name = "charline",
    versionProvider = Charline.Version.class,
    description =
        "Log the test patches you burn, and find the settings that lift the finish "
            + "and leave the wood unburned.",
    footer = {
      "",
      "Numbers may carry a unit: 30mm/s, 1.2in/s, 90um, 3.5mil, 25cm2, 48ft2.",
      "",
      "Example, from a new rig to the first patch:",
      "  charline rig add Heron --kind pulsed --rated 200W --spot 0.6mm --rep 40kHz \\",
      "      --width 60mm",
      "  charline board add boathouse-1 --wood pine --moisture 9%%",
      "  charline finish add wall-latex --coat latex:pale:90um --coat primer:pale",
      "  charline patch add --board boathouse-1 --finish wall-latex --power 60%% \\",
      "      --hand 22mm/s --passes 1 --outcome residue",
      "  charline patch add --like last --hand 18mm/s --outcome clean",
      "",
      "Exit codes: 0 done, 1 the answer is no, 2 usage error, 3 bad data or log",
      "error, 4 a fault in charline.",
      "",
      "`charline COMMAND --help` explains one command. A class 4 laser can blind you",
      "and start fires: eyewear for its wavelength, fume extraction, a fire watch and",
      "your local rules come before any setting found here."
    })
final class Charline extends LogCommand {
  @Spec private CommandSpec spec;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the versions of program, log, SQLite and Java.")
  boolean version;

  @Option(
      names = "--log",
      paramLabel = "FILE",
      scope = ScopeType.INHERIT,
      order = 999,
      description = "The log to use. Default: $$CHARLINE_LOG, else log.db in your data folder.")
  void log(Path file) {
    desk.useLog(file);
  }

  @Override
  public Integer call() {
    desk.err().print(spec.commandLine().getUsageMessage(CommandLine.Help.Ansi.OFF));
    return USAGE;
  }

  /** Versions of the program, its logs and its libraries. */
  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {
        "charline " + Release.version(),
        "log version " + Logbook.newestVersion(),
        "SQLite " + Logbook.sqliteVersion(),
        Release.java(System.getProperty("java.version.date", ""), LocalDate.now())
      };
    }
  }
}
