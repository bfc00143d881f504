/** The command of the benchmarks; each subcommand has a room of its own. */
@NullMarked
package org.stockcutting.bench;

import org.jspecify.annotations.NullMarked;
