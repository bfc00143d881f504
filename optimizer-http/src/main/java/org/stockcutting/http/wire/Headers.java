package org.stockcutting.http.wire;

import java.util.Map;

/** Headers of every answer: nothing is sniffed, framed, cached or run. */
final class Headers {

    static final Map<String, String> EVERY_ANSWER = Map.of(
            "X-Content-Type-Options", "nosniff",
            "Content-Security-Policy", "default-src 'none'; frame-ancestors 'none'; sandbox",
            "Referrer-Policy", "no-referrer",
            "Cross-Origin-Resource-Policy", "same-origin",
            "Cache-Control", "no-store");

    private Headers() {}
}
