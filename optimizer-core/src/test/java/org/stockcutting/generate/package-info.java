/** Seeded generators of whole jobs, for tests that hold for any job. */
@NullMarked
package org.stockcutting.generate;

import org.jspecify.annotations.NullMarked;
