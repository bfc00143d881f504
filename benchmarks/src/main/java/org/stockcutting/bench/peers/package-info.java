/**
 * Peers: what a user would pick instead of this library, run on the same jobs for the same time, and the table that compares them. All
 * of them get the same reduction to small integers, and every plan passes the same checker before it counts.
 */
@NullMarked
package org.stockcutting.bench.peers;

import org.jspecify.annotations.NullMarked;
