package org.stockcutting.http.wire;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.io.EndPoint;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * Closes connections whose body drips in: the idle timeout alone lets a sender hold a connection for ever with one byte now and then.
 * Stands outside the handler that gathers the body; {@link Arrived} stands inside and calls the deadline off.
 */
final class BodyDeadline extends Handler.Wrapper {

    private static final String DEADLINE = BodyDeadline.class.getName();

    private final int millis;

    BodyDeadline(int millis, Handler next) {
        super(next);
        this.millis = millis;
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (request.getLength() != 0) {
            EndPoint endPoint = request.getConnectionMetaData().getConnection().getEndPoint();
            Scheduler.Task deadline = request.getComponents()
                    .getScheduler()
                    .schedule(
                            () -> endPoint.close(new TimeoutException("a body took over " + millis + " ms")),
                            millis,
                            TimeUnit.MILLISECONDS);
            request.setAttribute(DEADLINE, deadline);
            Request.addCompletionListener(request, failure -> deadline.cancel());
        }
        return super.handle(request, response, callback);
    }

    /** Calls the deadline off: the body is here. */
    static final class Arrived extends Handler.Wrapper {

        @Override
        public boolean handle(Request request, Response response, Callback callback) throws Exception {
            if (request.getAttribute(DEADLINE) instanceof Scheduler.Task deadline) {
                deadline.cancel();
            }
            return super.handle(request, response, callback);
        }
    }
}
