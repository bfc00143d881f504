/**
 * Public instance sets, read from their authors' text formats, and jobs made by published rules and by shop rules of our own. Each becomes
 * an ordinary job, so that everything measured here went through the same door as a maker's parts list.
 *
 * <p>Numbers of an instance are millimetres (micrometres where a stock length would pass a kilometre), kerf and trims are nothing, boards
 * are 10 mm by 10 mm, sheets 10 mm thick. Costs are cents.
 */
@NullMarked
package org.stockcutting.bench.instances;

import org.jspecify.annotations.NullMarked;
