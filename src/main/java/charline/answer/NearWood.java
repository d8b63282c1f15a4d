package charline.answer;

/**
 * Trials that a question leaves out because they were burned on a near wood, such as another oak.
 *
 * @param wood the near wood
 * @param patches how many there are of the same coat under the same light
 */
public record NearWood(String wood, int patches) {}
