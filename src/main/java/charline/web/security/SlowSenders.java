package charline.web.security;

import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.io.Connection;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.handler.EagerContentHandler;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Keeps whoever sends slowly from the threads that answer. A body is waited for without a thread,
 * for a while and up to a size; only photos and files of the log, which paired devices alone may
 * send, are read by a thread as they come. An address has only so many connections.
 */
public final class SlowSenders {
  private static final Set<String> AS_THEY_COME = Set.of("/photos", "/log/file");
  private static final String DEADLINE = "deadline";
  private static final int CONNECTIONS_PER_ADDRESS = 64;

  private SlowSenders() {}

  /**
   * Puts the guard before everything that a server does.
   *
   * @param mostBytes largest body that is waited for
   * @param patienceSeconds for how long
   */
  public static void guard(Server server, long mostBytes, long patienceSeconds) {
    EagerContentHandler whole =
        new EagerContentHandler(
            new EagerContentHandler.RetainedContentLoaderFactory(mostBytes, -1, true));
    whole.exclude(request -> AS_THEY_COME.contains(Request.getPathInContext(request)));
    whole.setHandler(new Arrived());
    server.setHandler(new Waiting(whole, patienceSeconds));
  }

  /** Limits the connections of each address but those of this machine. */
  public static void limit(Server server) {
    for (Connector connector : server.getConnectors()) {
      connector.addBean(new ConnectionsOfAddress(CONNECTIONS_PER_ADDRESS));
    }
  }

  /** Hangs up when a body has not come in time. */
  private static final class Waiting extends Handler.Wrapper {
    private final long seconds;

    Waiting(Handler next, long seconds) {
      super(next);
      this.seconds = seconds;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
      boolean body =
          request.getLength() > 0 || request.getHeaders().contains(HttpHeader.TRANSFER_ENCODING);
      if (body && !AS_THEY_COME.contains(Request.getPathInContext(request))) {
        Connection connection = request.getConnectionMetaData().getConnection();
        Scheduler scheduler = request.getComponents().getScheduler();
        request.setAttribute(
            DEADLINE,
            scheduler.schedule(
                () -> connection.getEndPoint().close(new TimeoutException("body")),
                seconds,
                TimeUnit.SECONDS));
      }
      return super.handle(request, response, callback);
    }
  }

  /** The body is there. */
  private static final class Arrived extends Handler.Wrapper {
    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
      if (request.getAttribute(DEADLINE) instanceof Scheduler.Task task) {
        task.cancel();
      }
      return super.handle(request, response, callback);
    }
  }

  /** Counts the connections of each address, and hangs up on one too many. */
  static final class ConnectionsOfAddress implements Connection.Listener {
    private final int most;
    private final Map<InetAddress, Integer> open = new HashMap<>();

    ConnectionsOfAddress(int most) {
      this.most = most;
    }

    /** Whether an address may have one more connection. */
    synchronized boolean opened(InetAddress address) {
      return open.merge(address, 1, Integer::sum) <= most || address.isLoopbackAddress();
    }

    synchronized void closed(InetAddress address) {
      open.computeIfPresent(address, (a, count) -> count == 1 ? null : count - 1);
    }

    @Override
    public void onOpened(Connection connection) {
      if (connection.getEndPoint().getRemoteSocketAddress() instanceof InetSocketAddress remote
          && !opened(remote.getAddress())) {
        connection.getEndPoint().close();
      }
    }

    @Override
    public void onClosed(Connection connection) {
      if (connection.getEndPoint().getRemoteSocketAddress() instanceof InetSocketAddress remote) {
        closed(remote.getAddress());
      }
    }
  }
}
