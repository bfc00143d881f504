package org.stockcutting.http.wire;

/**
 * How the service listens and how much it takes on.
 *
 * @param host address to listen on
 * @param port port, 0 for any free one
 * @param solves how many jobs are planned at the same time
 * @param queueMillis how long a request waits for its turn before it is told to come back
 * @param idleMillis a connection silent for this long is closed
 * @param bodyMillis a body that has not arrived after this long is given up
 * @param connections how many connections are open at most; more wait to be accepted
 */
public record ServiceSettings(
        String host, int port, int solves, int queueMillis, int idleMillis, int bodyMillis, int connections) {

    /** Seconds that a plan may take while its sender waits for the answer. */
    static final int SYNC_SECONDS = 10;
    /** Entries on hand that are gone through one by one while the sender waits. */
    static final int SYNC_BOARDS = 100;
    /** Plans among which the effort of one is shared out where grades are set side by side. */
    static final int SYNC_MIXES = 16;
    /** Largest body, but for checks. */
    static final int JOB_BYTES = 1 << 20;
    /** Largest body of a check: plans are long. */
    static final int CHECK_BYTES = 16 << 20;
    /** Most layouts of a plan that is printed or drawn. */
    static final int PRINTED_LAYOUTS = 500;

    /** One solve a core, 2 s in the queue, 15 s of silence, 30 s for a body, 512 connections. */
    public static ServiceSettings on(String host, int port) {
        return new ServiceSettings(host, port, Runtime.getRuntime().availableProcessors(), 2_000, 15_000, 30_000, 512);
    }
}
