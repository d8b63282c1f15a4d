package charline.web.security;

import static org.assertj.core.api.Assertions.assertThat;

import charline.web.security.SlowSenders.ConnectionsOfAddress;
import java.net.InetAddress;
import java.net.UnknownHostException;
import org.junit.jupiter.api.Test;

class ConnectionsOfAddressTest {
  /** Of a network for documentation, RFC 5737. */
  private static InetAddress address(int last) throws UnknownHostException {
    return InetAddress.getByAddress(new byte[] {(byte) 192, 0, 2, (byte) last});
  }

  @Test
  void an_address_has_so_many_connections_and_others_have_their_own() throws UnknownHostException {
    ConnectionsOfAddress connections = new ConnectionsOfAddress(2);
    assertThat(connections.opened(address(1))).isTrue();
    assertThat(connections.opened(address(1))).isTrue();
    assertThat(connections.opened(address(1))).isFalse();
    assertThat(connections.opened(address(2))).isTrue();
    connections.closed(address(1));
    connections.closed(address(1));
    assertThat(connections.opened(address(1))).isTrue();
    for (int i = 0; i < 10; i++) {
      assertThat(connections.opened(InetAddress.getLoopbackAddress())).isTrue();
    }
  }
}
