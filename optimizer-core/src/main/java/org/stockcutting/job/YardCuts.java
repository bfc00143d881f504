package org.stockcutting.job;

import org.stockcutting.stock.Form;
import org.stockcutting.stock.Money;

/**
 * Having the yard make the first cuts: those that go right through a board or sheet as it was bought.
 *
 * @param form what the yard cuts
 * @param price price of one cut
 * @param free how many cuts in all cost nothing
 */
public record YardCuts(Form form, Money price, int free) {}
