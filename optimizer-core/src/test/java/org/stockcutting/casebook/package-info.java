/**
 * Cases through the door: text in, the answer in a line. A worked examples of books and papers, B published tables, C refusals and
 * reasons, D owned and measured wood, E warnings, F tiny jobs against exhaustive oracles, G documents that depend on nothing but the job,
 * H the form of documents, I spares, sets, groups, glue-ups and laminations, J goals.
 */
@NullMarked
package org.stockcutting.casebook;

import org.jspecify.annotations.NullMarked;
