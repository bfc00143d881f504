/**
 * The state of the work when something has gone wrong: which cuts are done, what is finished, which pieces of wood are in hand as they
 * now are, what is still wanted. It makes of a plan and a worklog the job that is left; planning that job is the business of the door.
 */
@NullMarked
package org.stockcutting.mishap;

import org.jspecify.annotations.NullMarked;
