package org.stockcutting.solve.columns;

/** A pattern and how often it is cut. */
record Cut(Pattern pattern, int copies) {}
