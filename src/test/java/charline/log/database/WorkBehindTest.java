package charline.log.database;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import charline.refusal.Refusal;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What another thread does is the transaction's as that is which it does itself. */
class WorkBehindTest {
  @TempDir private Path folder;
  private Database database;

  @BeforeEach
  void open() throws SQLException {
    Path file = folder.resolve("some.db");
    database =
        new Database(file, DriverManager.getConnection("jdbc:sqlite:" + file), Optional.empty());
    database.update("CREATE TABLE plank (number INTEGER PRIMARY KEY, came INTEGER NOT NULL)");
    add(1000, 0);
  }

  @AfterEach
  void close() {
    database.close();
  }

  private void add(int number, int came) {
    database.later(() -> insert(number, came));
  }

  private void insert(int number, int came) {
    database.insert("plank", new RowValues().put("number", number).put("came", came));
  }

  private List<Integer> numbers() {
    return database.query("SELECT number FROM plank ORDER BY number", row -> row.whole("number"));
  }

  private void behind(Runnable work) {
    database.inTransaction(
        () ->
            database.workingBehind(
                () -> {
                  work.run();
                  return null;
                }));
  }

  @Test
  void whoever_asks_sees_all_rows_so_far_in_their_order() {
    behind(
        () -> {
          for (int k = 1; k < 1000; k++) {
            add(1000 - k, k);
            if (k % 90 == 0) {
              assertThat(numbers()).hasSize(k + 1);
            }
          }
        });
    assertThat(database.query("SELECT number FROM plank ORDER BY came", row -> row.whole("number")))
        .isEqualTo(IntStream.range(0, 1000).mapToObj(k -> 1000 - k).toList());
  }

  @Test
  void what_goes_wrong_is_told_and_all_of_the_transaction_is_undone() {
    assertThatThrownBy(
            () ->
                behind(
                    () -> {
                      for (int k = 1; k < 5000; k++) {
                        add(k, k); // and 1000 is there
                      }
                    }))
        .isInstanceOf(Refusal.class);
    assertThat(numbers()).containsExactly(1000);
    add(1, 1);
    assertThat(numbers()).containsExactly(1, 1000);
  }

  @Test
  void a_last_row_that_goes_wrong_is_told_before_anything_is_kept() {
    assertThatThrownBy(
            () ->
                behind(
                    () -> {
                      add(1, 1);
                      add(1000, 2);
                    }))
        .isInstanceOf(Refusal.class);
    assertThat(numbers()).containsExactly(1000);
  }

  @Test
  void an_inner_transaction_that_is_given_up_takes_its_own_rows_with_it_and_no_others() {
    behind(
        () -> {
          add(1, 1);
          assertThatThrownBy(
                  () ->
                      database.inTransaction(
                          () -> {
                            add(2, 2);
                            throw new IllegalStateException("given up");
                          }))
              .hasMessage("given up");
          add(3, 3);
        });
    assertThat(numbers()).containsExactly(1, 3, 1000);
  }

  @Test
  void work_behind_may_ask_and_have_transactions_of_its_own() {
    behind(
        () -> {
          add(1, 1);
          database.later(
              () -> {
                assertThat(numbers()).containsExactly(1, 1000);
                database.inTransaction(
                    () -> {
                      insert(2, 2);
                      return null;
                    });
                assertThatThrownBy(
                        () ->
                            database.inTransaction(
                                () -> {
                                  insert(3, 3);
                                  throw new IllegalStateException("given up");
                                }))
                    .hasMessage("given up");
                add(4, 4);
              });
          assertThat(numbers()).containsExactly(1, 2, 4, 1000);
        });
    assertThat(numbers()).containsExactly(1, 2, 4, 1000);
  }

  @Test
  void work_outside_is_done_at_once() {
    add(1, 1);
    assertThat(database.query("SELECT number FROM plank", row -> row.whole("number")))
        .containsExactly(1, 1000);
  }

  @Test
  void nobody_else_comes_in_between() throws InterruptedException {
    AtomicInteger seen = new AtomicInteger();
    Thread other = new Thread(() -> seen.set(numbers().size()));
    behind(
        () -> {
          add(1, 1);
          other.start();
          while (other.getState() != Thread.State.WAITING && other.isAlive()) {
            Thread.onSpinWait();
          }
          add(2, 2);
        });
    other.join();
    assertThat(seen).hasValue(3);
  }

  @Test
  void work_within_work_shares_the_writer() {
    behind(
        () -> {
          add(2, 1);
          behind(() -> add(1, 2));
          add(3, 3);
        });
    assertThat(database.query("SELECT number FROM plank ORDER BY came", row -> row.whole("number")))
        .containsExactly(1000, 2, 1, 3);
  }

  @Test
  void no_more_than_a_few_wait_for_a_slow_disk() throws InterruptedException {
    CountDownLatch slowDisk = new CountDownLatch(1);
    AtomicInteger asked = new AtomicInteger();
    AtomicInteger written = new AtomicInteger();
    try (WorkBehind behind = new WorkBehind()) {
      Thread working =
          new Thread(
              () -> {
                for (int k = 0; k < 100; k++) {
                  behind.add(
                      () -> {
                        await(slowDisk);
                        written.incrementAndGet();
                      });
                  asked.incrementAndGet();
                }
              });
      working.start();
      while (working.getState() != Thread.State.WAITING && working.isAlive()) {
        Thread.onSpinWait();
      }
      assertThat(asked).hasValue(8);
      slowDisk.countDown();
      working.join();
    }
    assertThat(written).hasValue(100);
  }

  private static void await(CountDownLatch latch) {
    try {
      latch.await();
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }
}
