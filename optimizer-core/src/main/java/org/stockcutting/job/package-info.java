/**
 * One request as values: parts, stock, shop rules, allowances, goal and effort, and the semantic review of all of them.
 */
@NullMarked
package org.stockcutting.job;

import org.jspecify.annotations.NullMarked;
