package org.stockcutting.http.wire;

/** Ends a request with a problem. */
final class ProblemException extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final transient Problem problem;

    ProblemException(Problem problem) {
        super(problem.detail(), null, false, false);
        this.problem = problem;
    }

    ProblemException(ProblemKind kind, String detail) {
        this(Problem.of(kind, detail));
    }

    Problem problem() {
        return problem;
    }
}
