package charline.web.security;

import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.net.UnknownHostException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/**
 * The names under which the page may be asked for. Any other Host is a page of somebody else that
 * points its name at this machine.
 *
 * @param here names of this machine to itself
 * @param shared names and addresses on the shop's network; empty unless shared
 */
record Hosts(Set<String> here, Set<String> shared) {
  /** The names for a port. */
  static Hosts of(int port, boolean shared) {
    Set<String> here = new LinkedHashSet<>();
    for (String name : List.of("127.0.0.1", "localhost", "[::1]")) {
      here.add(name + ":" + port);
    }
    Set<String> others = new LinkedHashSet<>();
    if (shared) {
      networkNames().stream()
          .sorted(Comparator.comparing(Hosts::rank))
          .forEach(name -> others.add(name + ":" + port));
      others.removeAll(here);
    }
    return new Hosts(Collections.unmodifiableSet(here), Collections.unmodifiableSet(others));
  }

  /** What most devices can open comes first: numbers of four parts, then names. */
  private static int rank(String name) {
    if (name.startsWith("[")) {
      return 2;
    }
    return name.matches("[\\d.]+") ? 0 : 1;
  }

  boolean isHere(String host) {
    return host != null && here.contains(host.toLowerCase(Locale.ROOT));
  }

  boolean knows(String host) {
    return host != null
        && (here.contains(host.toLowerCase(Locale.ROOT))
            || shared.contains(host.toLowerCase(Locale.ROOT)));
  }

  private static List<String> networkNames() {
    List<String> names = new ArrayList<>();
    try {
      for (NetworkInterface card : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (card.isUp() && !card.isLoopback()) {
          for (InetAddress address : Collections.list(card.getInetAddresses())) {
            if (address.isLinkLocalAddress()) {
              continue; // no browser takes its scope
            }
            String text = address.getHostAddress().replaceAll("%.*", "");
            names.add(text.contains(":") ? "[" + text + "]" : text);
          }
        }
      }
      String name = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
      names.add(name);
      if (!name.contains(".")) {
        names.add(name + ".local");
      }
    } catch (SocketException | UnknownHostException e) {
      return names; // a machine that does not know its name answers to its addresses
    }
    return names;
  }
}
