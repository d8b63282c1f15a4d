package charline.web;

import static org.assertj.core.api.Assertions.assertThat;

import charline.picture.Pictures;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.time.Duration;
import java.util.Random;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A browser on the serving machine, reduced to what it sends. */
final class Device {
  private static final byte[] PNG = Pictures.plain("png");

  private final HttpClient client = HttpClient.newHttpClient();
  private final Random random;
  private final String address;
  private final String token;

  /**
   * @param address of the bench page, with its last slash
   */
  Device(String address, long seed) throws IOException, InterruptedException {
    this.address = address;
    random = new Random(seed);
    HttpRequest pulse = HttpRequest.newBuilder(URI.create(address + "pulse")).build();
    token = found("token", client.send(pulse, HttpResponse.BodyHandlers.ofString()).body());
  }

  /** What its entries must carry. */
  String token() {
    return token;
  }

  /** An identity of the kind that devices give. */
  UUID identity() {
    long time = System.currentTimeMillis() << 16;
    long high = time | 0x7000 | random.nextInt(0x1000);
    return new UUID(high, random.nextLong() >>> 2 | Long.MIN_VALUE);
  }

  /** Records a patch; gives the code that the bench acknowledged. */
  String patch(UUID id) throws IOException, InterruptedException {
    String json =
        """
        {"id":"%s","rig":"heron","board":"offcut","finish":"wall-latex","form":"hand","power":"60",
         "hand":"20","width":"60","spot":"0.5","rep":"60","passes":"1","outcome":"residue"}\
        """
            .formatted(id);
    return found("code", post("entries/patch", "application/json", json.getBytes()));
  }

  /** Records a further reading. */
  void reading(UUID patch, int passes, String outcome) throws IOException, InterruptedException {
    String json =
        "{\"id\":\"%s\",\"of_patch\":\"%s\",\"passes\":\"%d\",\"outcome\":\"%s\"}"
            .formatted(identity(), patch, passes, outcome);
    post("entries/reading", "application/json", json.getBytes());
  }

  /** Keeps a photo. */
  void photo(UUID patch) throws IOException, InterruptedException {
    post("photos?patch=%s&id=%s".formatted(patch, identity()), "image/png", PNG);
  }

  private String post(String path, String type, byte[] body)
      throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(URI.create(address + path))
            .timeout(Duration.ofSeconds(60))
            .header("Content-Type", type)
            .header("X-Bench-Token", token)
            .POST(HttpRequest.BodyPublishers.ofByteArray(body))
            .build();
    HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
    assertThat(answer.statusCode()).as(answer.body()).isEqualTo(200);
    return answer.body();
  }

  private static String found(String name, String json) {
    Matcher m = Pattern.compile("\"%s\":\"([^\"]+)\"".formatted(name)).matcher(json);
    assertThat(m.find()).as(json).isTrue();
    return m.group(1);
  }
}
