package org.stockcutting.http.cli;

/** What the commands tell a script. The numbers are a contract. */
final class ExitStatus {

    /** Everything asked for was done. */
    static final int DONE = 0;
    /** Parts were left unplaced, or a check found violations. */
    static final int INCOMPLETE = 1;
    /** The input was refused: files, options, or the job itself. */
    static final int REFUSED = 2;
    /** A fault of this program. */
    static final int INTERNAL = 3;

    private ExitStatus() {}
}
