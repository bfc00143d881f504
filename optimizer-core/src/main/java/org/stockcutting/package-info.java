/**
 * The door: a job goes in, a checked plan comes out.
 *
 * <p>Inside, data flows one way: {@code job} (reviewed) to {@code blank} (rough pieces) to {@code solve} (components, patterns, boards)
 * to {@code plan} (layouts, bound, certificate), through {@code sequence} and {@code report} for what follows from it, and past
 * {@code check}, which recomputes everything from the job and shares nothing with the planner.
 */
@NullMarked
package org.stockcutting;

import org.jspecify.annotations.NullMarked;
