package org.stockcutting.solve;

import java.math.BigInteger;
import org.stockcutting.blank.FinishedVolume;
import org.stockcutting.blank.RoughPiece;
import org.stockcutting.length.Length;
import org.stockcutting.length.Volume;
import org.stockcutting.material.NominalCatalog;
import org.stockcutting.material.NominalSize;
import org.stockcutting.part.Part;
import org.stockcutting.part.Section;

/** Finished volume that one rough piece stands for: the first goal is to place most of it. */
public final class PieceWeight {

    private PieceWeight() {}

    /** Cubic nanometres, at least 1. */
    static BigInteger of(RoughPiece piece) {
        return finished(piece.part())
                .cubicNanometres()
                .multiply(BigInteger.valueOf(piece.part().gang()))
                .divide(BigInteger.valueOf(piece.members().of()))
                .max(BigInteger.ONE);
    }

    /** Finished volume of a part without its edging; one taken as it comes counts at the catalog's size. */
    public static Volume finished(Part part) {
        if (part.coreSection() instanceof Section.Measured measured) {
            return FinishedVolume.of(part, measured);
        }
        String name = ((Section.Nominal) part.section()).name();
        NominalSize size = NominalCatalog.standard()
                .find(name)
                .orElseThrow(() -> new IllegalArgumentException("no trade size " + name + " in the catalog"));
        Length width = size.width() == null ? size.thickness() : size.width();
        return Volume.of(part.length(), width, size.thickness());
    }
}
