package org.stockcutting.solve.guillotine;

import java.util.List;

/** Reads a best pattern off a filled {@link PricingTable}. */
final class PatternReader {

    private final PricingTable table;
    private final boolean lyingLines;

    private final PartOrder order;

    /** @param lyingLines true if lines run along x */
    PatternReader(PricingTable table, boolean lyingLines, PartOrder order) {
        this.table = table;
        this.order = order;
        this.lyingLines = lyingLines;
    }

    Cell whole() {
        return read(table.across.size(), table.along.size());
    }

    /** The best pattern of a part of the board of these extents. */
    Cell read(int across, int along) {
        int a = table.across.before(across);
        int b = table.along.before(along);
        int value = table.at(a, b);
        if (value == 0) {
            return rest(across, along);
        }
        while (table.at(a - 1, b) == value) {
            a--;
        }
        while (table.at(a, b - 1) == value) {
            b--;
        }
        int sizeA = table.across.at[a];
        int sizeB = table.along.at[b];
        for (ExactPricing.Lying lying : table.lyings) {
            if (lying.value() == value && lying.across() <= sizeA && lying.along() <= sizeB) {
                return alone(lying, across, along);
            }
        }
        boolean ripped = sizeB <= table.reach.rip();
        for (int i = 1; ripped && i < a && table.across.at[i] <= table.reach.fence(); i++) {
            int size = table.across.at[i];
            if (table.at(i, b) + table.at(table.across.before(sizeA - size), b) == value) {
                return join(true, across, along, read(size, along), read(across - size, along));
            }
        }
        if (across > table.reach.crosscut()) {
            return join(true, across, along, read(sizeA, along), rest(across - sizeA, along));
        }
        for (int j = 1; j < b; j++) {
            int size = table.along.at[j];
            if (table.at(a, j) + table.at(a, table.along.before(sizeB - size)) == value) {
                return join(false, across, along, read(across, size), read(across, along - size));
            }
        }
        throw new IllegalStateException("no pattern of worth " + value + " at " + sizeA + " x " + sizeB);
    }

    private Cell alone(ExactPricing.Lying lying, int across, int along) {
        Cell piece = Cell.piece(
                lying.type(),
                lying.turned(),
                lyingLines ? lying.along() : lying.across(),
                lyingLines ? lying.across() : lying.along());
        Cell cell = piece;
        if (lying.along() < along) {
            cell = join(false, lying.across(), along, cell, rest(lying.across(), along - lying.along()));
        }
        if (lying.across() < across) {
            cell = join(true, across, along, cell, rest(across - lying.across(), along));
        }
        return cell;
    }

    private Cell rest(int across, int along) {
        return lyingLines ? Cell.rest(along, across) : Cell.rest(across, along);
    }

    /** @param stacked true if the parts follow each other across the lines */
    private Cell join(boolean stacked, int across, int along, Cell one, Cell other) {
        long length = lyingLines ? along : across;
        long width = lyingLines ? across : along;
        return Cell.join(stacked != lyingLines, length, width, List.of(one, other), order);
    }
}
