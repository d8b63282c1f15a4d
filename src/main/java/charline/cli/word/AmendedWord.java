package charline.cli.word;

import charline.cli.command.CommandContext;
import charline.cli.command.WhyOption;
import charline.log.Logbook;
import charline.log.OwnWords;
import charline.record.Setup;
import charline.trial.OwnWord;
import picocli.CommandLine.Mixin;

/** What an added word is like from now on: why, and who says so. */
final class AmendedWord {
  @Mixin private WhyOption why;

  /** Amends a word; of one added minutes ago, without a reason. */
  OwnWord amend(CommandContext desk, Logbook log, OwnWords.Sort sort, String name, String like) {
    String reason =
        why.reason(
            "a record is amended",
            () ->
                log.ownWords()
                    .find(sort, name)
                    .filter(added -> log.isFresh(added.word().id()))
                    .isPresent());
    return new Setup(log, doubts -> {}, why.person(desk)).amendWord(sort, name, like, reason);
  }
}
