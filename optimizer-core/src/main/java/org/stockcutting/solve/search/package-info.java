/**
 * Local search over finished pattern plans, for what patterns cannot say: shop rules, wood on hand first, one long offcut, fewer
 * different patterns. It is the only room that knows OptaPlanner.
 *
 * <p>Model: a {@code Piece} (planning entity) lies on a {@code Board} (planning variable, basic not list). Order on a board does not
 * matter: on a board without bad zones any order fits if one does. Boards with zones, and boards cut in two dimensions, are not
 * touched. Each rule is one method of {@code ShopConstraints}.
 *
 * <p>Reading order: {@code SearchEngine}, {@code StartReader}, {@code ShopConstraints}, {@code Ending}.
 */
@NullMarked
package org.stockcutting.solve.search;

import org.jspecify.annotations.NullMarked;
