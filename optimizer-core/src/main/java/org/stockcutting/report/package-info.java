/**
 * What follows from a plan's layouts: the buying list, where the wood goes, offcuts for the rack, and what a maker should be warned
 * about. Everything is recomputed from the job and the layouts; nothing is searched.
 */
@NullMarked
package org.stockcutting.report;

import org.jspecify.annotations.NullMarked;
