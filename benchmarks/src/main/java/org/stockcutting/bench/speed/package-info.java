/** Speed: the hot kernels under JMH, and how time and memory of a whole plan grow with the size of the job. */
@NullMarked
package org.stockcutting.bench.speed;

import org.jspecify.annotations.NullMarked;
