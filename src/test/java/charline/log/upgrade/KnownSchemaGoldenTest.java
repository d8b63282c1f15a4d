package charline.log.upgrade;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Renewed with {@code -Dcharline.golden.write=true} after a new migration. */
class KnownSchemaGoldenTest {
  @TempDir Path folder;

  @Test
  void the_known_rules_are_those_of_a_new_log() throws Exception {
    Path file = Files.createFile(folder.resolve("new.db"));
    Migrations.apply(file);
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file);
        Statement statement = connection.createStatement()) {
      String rules = Schema.text(statement);
      if (Boolean.getBoolean("charline.golden.write")) {
        Files.writeString(Path.of("src/main/resources/charline/log/upgrade/schema.sql"), rules);
      } else {
        assertThat(Schema.known())
            .as("renew it with -Dcharline.golden.write=true")
            .isEqualTo(rules);
      }
    }
  }
}
