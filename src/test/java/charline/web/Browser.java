package charline.web;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.ElementClickInterceptedException;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.StaleElementReferenceException;
import org.openqa.selenium.WebDriver;
import org.openqa.selenium.WebDriverException;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.WindowType;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.print.PrintOptions;

/** Debian's Chromium without a window, as one device. */
final class Browser implements AutoCloseable {
  static {
    // The driver speaks for any version; that Selenium knows this one's tools only in part is no
    // news.
    Logger.getLogger("org.openqa.selenium").setLevel(Level.SEVERE);
  }

  private static final String LEFT_BEHIND = "does not belong to the document";

  /** What is waited for may need several fits on a machine that is busy with others. */
  private static final Duration PATIENCE =
      Duration.ofSeconds(Integer.getInteger("charline.patience", 120));

  private final ChromeDriver driver;

  /**
   * The window in which a page is printed would stay open for ever, as nobody is here to close it,
   * and would keep the printer busy: pages count in its place.
   */
  private static final String COUNT_PRINTS =
      "window.printed = 0; window.print = () => { window.printed++; };";

  /**
   * A page gives an entry a code of its own when the bench has not answered for 3 s, and gives a
   * request up after 8 s. On a busy machine an answer may take that long though nothing is wrong:
   * an entry that is on its way is waited for, and requests have a minute. Without a connection
   * nothing is on its way, and the 3 s are 3 s.
   */
  private static final String AWAIT_ANSWERS =
      """
      (() => {
        const timer = window.setTimeout, ask = window.fetch;
        let underWay = 0;
        window.fetch = async (path, options) => {
          const entry = options && options.method === "POST";
          if (entry) underWay++;
          try { return await ask(path, options); }
          finally { if (entry) timer(() => underWay--, 500); }
        };
        window.setTimeout = (work, ms, ...more) => {
          const due = () => underWay ? timer(due, 50) : work(...more);
          return ms === 3000 ? timer(due, ms) : timer(work, ms === 8000 ? 60000 : ms, ...more);
        };
      })();
      """;

  private Browser(ChromeDriver driver) {
    this.driver = driver;
    prepareTab();
  }

  /** For the pages of this tab; a new tab has to be asked anew. */
  private void prepareTab() {
    driver.executeCdpCommand(
        "Page.addScriptToEvaluateOnNewDocument", Map.of("source", COUNT_PRINTS + AWAIT_ANSWERS));
  }

  /** Opens a further tab and goes to it. */
  void newTab() {
    driver.switchTo().newWindow(WindowType.TAB);
    prepareTab();
  }

  /**
   * A device.
   *
   * @param dark whether it prefers dark pages
   * @param names host names that mean this machine to it
   */
  static Browser open(boolean dark, String... names) throws IOException {
    Path chromium = Path.of("/usr/bin/chromium");
    Path driverProgram = Path.of("/usr/bin/chromedriver");
    boolean there = Files.isExecutable(chromium) && Files.isExecutable(driverProgram);
    if (!there && "required".equals(System.getenv("CHARLINE_BROWSER"))) {
      throw new AssertionError(
          "This journey needs a browser; install chromium and chromium-driver.");
    }
    Assumptions.assumeTrue(
        there, "No /usr/bin/chromium with /usr/bin/chromedriver on this machine.");
    ChromeOptions options = new ChromeOptions();
    options.setBinary(chromium.toFile());
    options.addArguments(
        "--headless=new",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-dev-shm-usage",
        "--hide-scrollbars");
    if (dark) {
      options.addArguments("--force-dark-mode", "--blink-settings=preferredColorScheme=0");
    }
    if (names.length > 0) {
      options.addArguments(
          "--host-resolver-rules="
              + String.join(",", Stream.of(names).map(n -> "MAP " + n + " 127.0.0.1").toList()));
    }
    ChromeDriverService service =
        new ChromeDriverService.Builder()
            .usingDriverExecutable(driverProgram.toFile())
            .withTimeout(PATIENCE)
            .build();
    return new Browser(new ChromeDriver(service, options));
  }

  /**
   * As good as a browser that was just opened: one tab that nothing was done in, nothing stored, no
   * complaints. Starting a browser takes seconds.
   */
  Browser fresh() {
    String origin = (String) script("return location.origin");
    if (origin.startsWith("http")) {
      driver.executeCdpCommand(
          "Storage.clearDataForOrigin", Map.of("origin", origin, "storageTypes", "all"));
    }
    Set<String> before = driver.getWindowHandles();
    newTab();
    String tab = driver.getWindowHandle();
    for (String old : before) {
      driver.switchTo().window(old).close();
    }
    driver.switchTo().window(tab);
    driver.manage().deleteAllCookies();
    complaints();
    return this;
  }

  /** Takes the size of a phone or a tablet, whatever the least size of a window is. */
  Browser size(int width, int height) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of("width", width, "height", height, "deviceScaleFactor", 1, "mobile", width < 600));
    return this;
  }

  WebDriver driver() {
    return driver;
  }

  /**
   * Opens a page and waits until all of it has come: on a busy machine the driver itself gives the
   * first page of a new browser back half loaded.
   */
  void open(String address) {
    driver.get(address);
    untilLoaded(address);
  }

  /** Loads the page anew, as a person does who doubts it. */
  void reload() {
    driver.navigate().refresh();
    untilLoaded(driver.getCurrentUrl());
  }

  private void untilLoaded(String address) {
    boolean blank = address.startsWith("about:") || address.startsWith("data:");
    until(
        "all of " + address,
        () ->
            (Boolean)
                    script(
                        "return document.readyState === 'complete'"
                            + " && /^(about|data):/.test(location.href) === arguments[0]",
                        blank)
                ? true
                : null);
  }

  /** Cuts the connection of this device, or gives it back. */
  void connection(boolean there) {
    driver.executeCdpCommand("Network.enable", Map.of());
    driver.executeCdpCommand(
        "Network.emulateNetworkConditions",
        Map.of("offline", !there, "latency", 0, "downloadThroughput", -1, "uploadThroughput", -1));
  }

  /** What the person has set of colours and motion, such as prefers-color-scheme and dark. */
  void prefers(String feature, String value) {
    driver.executeCdpCommand(
        "Emulation.setEmulatedMedia",
        Map.of("features", List.of(Map.of("name", feature, "value", value))));
  }

  /** Lets pages run their scripts, or not. */
  void scripts(boolean run) {
    driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", !run));
  }

  /** Whether all of its height lies in the screen. */
  boolean inSight(WebElement element) {
    return (Boolean)
        script(
            "const r = arguments[0].getBoundingClientRect(); return r.top >= 0 && r.bottom <="
                + " innerHeight",
            element);
  }

  WebElement find(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  List<WebElement> all(String css) {
    return driver.findElements(By.cssSelector(css));
  }

  /** Taps what is there to be tapped. */
  void tap(String css) {
    tap(css, By.cssSelector(css));
  }

  /** Taps the link or button that says a text. */
  void tapText(String text) {
    tap(
        text,
        By.xpath(
            "//*[self::a or self::button or self::summary][contains(., '%s')]".formatted(text)));
  }

  private void tap(String what, By by) {
    until(
        what,
        () -> {
          Optional<WebElement> there =
              driver.findElements(by).stream().filter(e -> e.getRect().getHeight() > 0).findFirst();
          if (there.isEmpty()) {
            return null;
          }
          script("arguments[0].scrollIntoView({block:'center'})", there.get());
          there.get().click();
          return there;
        });
  }

  /** Opens a fold of the page. */
  void unfold(String id) {
    script("document.getElementById(arguments[0]).open = true", id);
  }

  /** Types over what a field holds. */
  void type(String css, String text) {
    script(
        "arguments[0].value = arguments[1]; arguments[0].dispatchEvent(new Event('input', {bubbles:"
            + " true}))",
        find(css),
        text);
  }

  String text(String css) {
    return find(css).getText();
  }

  /** Waits until an element says a text, in capitals or not. */
  void untilSays(String css, String text) {
    String wanted = text.toLowerCase(Locale.ROOT);
    until(
        css + " says " + text,
        () ->
            all(css).stream().anyMatch(e -> e.getText().toLowerCase(Locale.ROOT).contains(wanted))
                ? true
                : null);
  }

  /** Waits until there is an answer. */
  <T> T until(String what, Supplier<T> answer) {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (true) {
      T got = null;
      try {
        got = asking() ? null : answer.get();
      } catch (StaleElementReferenceException | ElementClickInterceptedException e) {
        // the page is being changed; look again
      } catch (WebDriverException e) {
        if (!String.valueOf(e.getMessage()).contains(LEFT_BEHIND)) {
          throw e;
        }
        // as above: the browser's word for an element of the page before
      }
      if (got != null) {
        return got;
      }
      if (System.nanoTime() > end) {
        throw new AssertionError("Waited in vain for " + what + " on:\n" + find("body").getText());
      }
      try {
        Thread.sleep(50);
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
        throw new AssertionError(e);
      }
    }
  }

  /** Whether a page is on its way into the one that is shown. */
  private boolean asking() {
    return Boolean.TRUE.equals(
        script("return document.documentElement.classList.contains('asking')"));
  }

  Object script(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeScript(script, arguments);
  }

  /** What an expression gives over a module of the page, which it calls m. */
  Object module(String name, String expression, Object... arguments) {
    return script(
        "return import(new URL('%s', document.querySelector('script[src]').src)).then(m => %s)"
            .formatted(name, expression),
        arguments);
  }

  Object asyncScript(String script, Object... arguments) {
    return ((JavascriptExecutor) driver).executeAsyncScript(script, arguments);
  }

  /** What the browser complained of since it was last asked: scripts, styles and files refused. */
  List<String> complaints() {
    return driver.manage().logs().get(LogType.BROWSER).getAll().stream()
        .map(LogEntry::getMessage)
        .toList();
  }

  /** How often the page asked to be printed. */
  long printed() {
    return (Long) script("return window.printed");
  }

  /** Prints the page to a file. */
  void print(Path pdf) throws IOException {
    String content = driver.print(new PrintOptions()).getContent();
    Files.write(pdf, OutputType.BYTES.convertFromBase64Png(content));
  }

  /** Keeps a picture of the whole page. */
  void picture(Path file) throws IOException {
    Files.write(file, driver.getScreenshotAs(OutputType.BYTES));
  }

  /** Keeps a picture of the page from top to bottom, where pictures are asked for. */
  void wholePicture(Path file, int width) throws IOException {
    if (System.getProperty("charline.pictures", "").isEmpty()) {
      return; // they take as long as all that is tested
    }
    long height =
        Math.min(2600, (Long) script("return Math.ceil(document.documentElement.scrollHeight)"));
    size(width, (int) height);
    picture(file);
  }

  /** Goes back to what the keyboard reached before. */
  void pressBack() {
    new Actions(driver).keyDown(Keys.SHIFT).sendKeys(Keys.TAB).keyUp(Keys.SHIFT).perform();
  }

  /** Presses keys on whatever has the focus. */
  void press(String keys) {
    new Actions(driver)
        .sendKeys(keys.replace('\t', Keys.TAB.charAt(0)).replace('\n', Keys.ENTER.charAt(0)))
        .perform();
  }

  @Override
  public void close() {
    driver.quit();
  }
}
