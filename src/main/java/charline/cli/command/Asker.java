package charline.cli.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.util.Optional;

/** Someone who can be asked for missing values. */
public interface Asker {
  /** Nobody: a script, a pipe. Whatever is missing is then an error. */
  Asker NOBODY =
      new Asker() {
        @Override
        public boolean present() {
          return false;
        }

        @Override
        public Optional<String> answer(String question) {
          return Optional.empty();
        }
      };

  /** Whether there is anyone to ask. */
  boolean present();

  /** The answer to a question, trimmed; empty when the person has gone. */
  Optional<String> answer(String question);

  /** The person at a terminal. */
  static Asker at(InputStream in, PrintStream prompts) {
    BufferedReader lines = new BufferedReader(new InputStreamReader(in, Charset.defaultCharset()));
    return new Asker() {
      @Override
      public boolean present() {
        return true;
      }

      @Override
      public Optional<String> answer(String question) {
        prompts.print(question + ": ");
        prompts.flush();
        try {
          return Optional.ofNullable(lines.readLine()).map(String::strip);
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    };
  }
}
