package org.stockcutting.http.wire;

import java.util.Optional;

/** Every kind of refusal; the codes are a contract, {@code GET /problems/{code}} explains them. */
enum ProblemKind {
    BAD_REQUEST("bad-request", 400, "The request is malformed", "The bytes are no valid HTTP request."),
    BAD_DOCUMENT(
            "bad-document",
            400,
            "The body is no JSON document",
            "The body must be one JSON document in UTF-8 (RFC 8259), each name once in an object, within the limits on size"
                    + " and depth. The entries under errors say where reading stopped."),
    NOT_FOUND("not-found", 404, "There is nothing at this address", "Check the path; it is case sensitive."),
    METHOD_NOT_ALLOWED(
            "method-not-allowed",
            405,
            "This address does not take this method",
            "The Allow header lists the methods that it takes."),
    NOT_ACCEPTABLE(
            "not-acceptable",
            406,
            "The answer does not come in a type that the request accepts",
            "Send an Accept header with one of the types named in the detail, or none."),
    TIMEOUT("timeout", 408, "The request took too long to arrive", "Send the whole request without pauses."),
    TOO_LARGE(
            "too-large",
            413,
            "The body is too large",
            "A job may have 1 MB, the body of a check 16 MB. Split the job."),
    URI_TOO_LONG("uri-too-long", 414, "The address is too long", "All input goes into the body."),
    UNSUPPORTED_MEDIA_TYPE(
            "unsupported-media-type",
            415,
            "The body is of a type that is not read here",
            "Send Content-Type: application/json, in UTF-8 and without a Content-Encoding."),
    FAULTY_INPUT(
            "faulty-input",
            422,
            "The input has faults",
            "The document was read, but it cannot be worked with as it stands. The entries under errors name every place,"
                    + " what stands there, what is wanted, and the way out."),
    TOO_MANY_PAGES(
            "too-many-pages",
            422,
            "The plan has more layouts than are printed at once",
            "Every layout has a page or a picture of its own. Ask for the plan as a document or a table, split the job, or print with the"
                    + " command line."),
    HEADERS_TOO_LARGE("headers-too-large", 431, "The headers are too large", "Send fewer or shorter headers."),
    INTERNAL(
            "internal",
            500,
            "The service failed",
            "This is a fault of the service, not of the request. Its log tells more."),
    BUSY(
            "busy",
            503,
            "All planners are busy",
            "Come back after the seconds in the Retry-After header; the request was not begun."),
    HTTP_VERSION("http-version", 505, "That version of HTTP is not spoken here", "Send HTTP/1.1.");

    private final String code;
    private final int status;
    private final String title;
    private final String text;

    ProblemKind(String code, int status, String title, String text) {
        this.code = code;
        this.status = status;
        this.title = title;
        this.text = text;
    }

    String code() {
        return code;
    }

    int status() {
        return status;
    }

    String title() {
        return title;
    }

    String text() {
        return text;
    }

    static Optional<ProblemKind> ofCode(String code) {
        for (ProblemKind kind : values()) {
            if (kind.code.equals(code)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    /** The kind for a status that the web server or a library came up with. */
    static ProblemKind ofStatus(int status) {
        for (ProblemKind kind : values()) {
            if (kind.status == status && kind != BAD_DOCUMENT) {
                return kind;
            }
        }
        return status >= 500 ? INTERNAL : BAD_REQUEST;
    }
}
