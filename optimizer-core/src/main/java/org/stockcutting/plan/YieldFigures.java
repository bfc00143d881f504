package org.stockcutting.plan;

import java.math.BigDecimal;
import org.stockcutting.length.Volume;

/**
 * Where the wood goes. Exactly: used = parts + allowance + kerf + trim + zones + offcutsKept + waste.
 *
 * @param used raw volume of every board in the plan
 * @param parts finished volume of the placed parts, spares included
 * @param allowance what milling removes from rough pieces, planing of thicker stock included
 * @param kerf saw dust of all cuts but trims
 * @param trim trims with their own cuts
 * @param zones bad zones inside what is thrown away
 * @param offcutsKept offcuts worth keeping
 * @param waste the rest
 * @param ratio parts / used, rounded down to four decimals; 0 when nothing is used
 */
public record YieldFigures(
        Volume used,
        Volume parts,
        Volume allowance,
        Volume kerf,
        Volume trim,
        Volume zones,
        Volume offcutsKept,
        Volume waste,
        BigDecimal ratio) {}
