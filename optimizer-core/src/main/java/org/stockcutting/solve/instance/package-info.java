/**
 * One independent component of a job reduced to small integers, and what an engine answers to it. The ladder divides all lengths by
 * their greatest common divisor; engines never see nanometres.
 */
@NullMarked
package org.stockcutting.solve.instance;

import org.jspecify.annotations.NullMarked;
