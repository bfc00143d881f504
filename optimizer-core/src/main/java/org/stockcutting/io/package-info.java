/**
 * Documents in and out: jobs, plans, buying lists and reviews as JSON, parts and stock as CSV too. Every fault of text and shape is found
 * here, all of them at once; what a job means is reviewed by {@link org.stockcutting.job.JobReview}. The only importer of Jackson.
 *
 * <p>Reading order: {@link org.stockcutting.io.Fields} says what a job document may hold, {@code DocObject} reads one object of it by that
 * table, {@link org.stockcutting.io.JobReader} is the door. Plans go the same way by {@link org.stockcutting.io.PlanFields}.
 */
@NullMarked
package org.stockcutting.io;

import org.jspecify.annotations.NullMarked;
