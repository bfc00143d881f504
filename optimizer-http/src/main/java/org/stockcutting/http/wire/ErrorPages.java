package org.stockcutting.http.wire;

import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.jspecify.annotations.Nullable;

/** The web server's own refusals, of requests that never reach a route, in the shape of all others. */
final class ErrorPages extends ErrorHandler {

    /** Every method gets a body, not only those that usually carry one. */
    @Override
    public boolean errorPageForMethod(String method) {
        return true;
    }

    @Override
    protected void generateResponse(
            Request request,
            Response response,
            int code,
            @Nullable String message,
            @Nullable Throwable cause,
            Callback callback) {
        ProblemKind kind = ProblemKind.ofStatus(code);
        int status = code >= 400 ? code : kind.status();
        Problem problem = new Problem(kind, status, kind.text(), java.util.List.of(), java.util.Map.of());
        response.setStatus(status);
        Headers.EVERY_ANSWER.forEach(response.getHeaders()::put);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, Problem.TYPE);
        response.write(true, ByteBuffer.wrap(problem.bytes()), callback);
    }
}
