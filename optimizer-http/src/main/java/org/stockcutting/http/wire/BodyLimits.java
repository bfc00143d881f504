package org.stockcutting.http.wire;

import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.EagerContentHandler.ContentLoader;
import org.eclipse.jetty.server.handler.EagerContentHandler.ContentLoaderFactory;
import org.eclipse.jetty.server.handler.EagerContentHandler.RetainedContentLoaderFactory;
import org.eclipse.jetty.util.Callback;

/** Gathers a body before any thread is spent on it, so that slow senders cost nothing but their connection; too much is refused. */
final class BodyLimits implements ContentLoaderFactory {

    private static final int FRAMING_GUESSED = -1;

    private final RetainedContentLoaderFactory jobs =
            new RetainedContentLoaderFactory(ServiceSettings.JOB_BYTES, FRAMING_GUESSED, true);
    private final RetainedContentLoaderFactory checks =
            new RetainedContentLoaderFactory(ServiceSettings.CHECK_BYTES, FRAMING_GUESSED, true);

    /** Any type of content. */
    @Override
    @SuppressWarnings("NullAway") // Jetty's way to say "any"; it is not annotated.
    public String getApplicableMimeType() {
        return null;
    }

    @Override
    public ContentLoader newContentLoader(
            String contentType,
            String mimeType,
            Handler handler,
            Request request,
            Response response,
            Callback callback) {
        String path = Request.getPathInContext(request);
        boolean check = path.equals(Routes.CHECKS) || path.equals(Routes.REPLANS);
        return (check ? checks : jobs).newContentLoader(contentType, mimeType, handler, request, response, callback);
    }
}
