package charline.web.security;

/**
 * Who sends a request: the serving machine itself, or a device that was paired.
 *
 * @param id identity of the device, "here" for the serving machine
 * @param name what the person called the device
 * @param here true for the serving machine
 * @param formToken what a form of this device must carry to be taken
 */
public record Client(String id, String name, boolean here, String formToken) {
  static final String HERE = "here";
}
