package org.stockcutting.http.wire;

import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.TimeoutException;
import org.jspecify.annotations.Nullable;

/** The body of a request, if it is what a JSON route takes: declared as JSON, plain, in UTF-8, and not too large. */
final class RequestBody {

    private RequestBody() {}

    static String json(Context ctx, int mostBytes) {
        checkType(ctx.header("Content-Type"));
        String encoding = ctx.header("Content-Encoding");
        if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
            throw unsupported("The body has a Content-Encoding.");
        }
        byte[] bytes = bytes(ctx);
        if (bytes.length > mostBytes) {
            throw new ProblemException(
                    ProblemKind.TOO_LARGE,
                    "The body has " + bytes.length + " bytes; at most " + mostBytes + " are read.");
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .onUnmappableCharacter(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(bytes))
                    .toString();
        } catch (CharacterCodingException e) {
            throw new ProblemException(ProblemKind.BAD_DOCUMENT, "The body is no UTF-8 text.");
        }
    }

    /** A body that breaks off or is badly chunked is its sender's fault, whatever the web server throws about it. */
    private static byte[] bytes(Context ctx) {
        try {
            return ctx.bodyAsBytes();
        } catch (HttpResponseException e) {
            throw e;
        } catch (Exception e) {
            boolean late = e instanceof TimeoutException || e.getCause() instanceof TimeoutException;
            ProblemKind kind = late ? ProblemKind.TIMEOUT : ProblemKind.BAD_REQUEST;
            throw new ProblemException(
                    Problem.of(kind, "The body did not arrive whole.").with("Connection", "close"));
        }
    }

    private static void checkType(@Nullable String header) {
        if (header == null) {
            throw unsupported("The request has no Content-Type.");
        }
        String[] parts = header.toLowerCase(Locale.ROOT).split(";", -1);
        boolean json = parts[0].strip().equals("application/json");
        for (int i = 1; i < parts.length; i++) {
            String parameter = parts[i].strip().replace("\"", "");
            json &= parameter.isEmpty() || parameter.equals("charset=utf-8");
        }
        if (!json) {
            throw unsupported("The Content-Type is not application/json in UTF-8.");
        }
    }

    private static ProblemException unsupported(String detail) {
        return new ProblemException(
                Problem.of(ProblemKind.UNSUPPORTED_MEDIA_TYPE, detail).with("Accept", "application/json"));
    }
}
